namespace CalibGeom.Features;

/// <summary>
/// When something is measured: the order of work at the bench, in which nothing spoils what comes later.
/// </summary>
public enum WorkStep
{
    /// <summary>Count and look, before anything is touched.</summary>
    Count,

    /// <summary>Heights and all that needs the object whole.</summary>
    Whole,

    /// <summary>Outside sizes, after loose boxes are broken off.</summary>
    Outside,

    /// <summary>Inside sizes.</summary>
    Inside,

    /// <summary>Fits, which rub on the faces.</summary>
    Feel,

    /// <summary>What the measuring itself may break: thin columns between jaws, feeler gauges in slots.</summary>
    Last,
}
