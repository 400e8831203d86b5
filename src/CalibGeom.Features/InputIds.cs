namespace CalibGeom.Features;

/// <summary>
/// The ids of input errors (<see cref="InputException.Id"/>): what kind of input cannot be used. They stay what they
/// are between versions of the same first number.
/// </summary>
public static class InputIds
{
    /// <summary>An input of no kind named here.</summary>
    public const string Other = "input";

    /// <summary>
    /// A file or stream itself: not there, in use, too large, not text or not CSV, of no name that is known, or no
    /// place to write.
    /// </summary>
    public const string File = "file";

    /// <summary>A spec, or a value of one.</summary>
    public const string Spec = "spec";

    /// <summary>A family: what is swept, its shares and its journal.</summary>
    public const string Family = "family";

    /// <summary>The file that says what a made object is, or the search for it.</summary>
    public const string ObjectFile = "object-file";

    /// <summary>A feature table.</summary>
    public const string FeatureTable = "feature-table";

    /// <summary>A mesh file, or a mesh that cannot be worked on.</summary>
    public const string Mesh = "mesh";

    /// <summary>A plate, its parts or its coupons.</summary>
    public const string Plate = "plate";

    /// <summary>A readings file, or readings of one.</summary>
    public const string Readings = "readings";

    /// <summary>A caliper record.</summary>
    public const string CaliperRecord = "caliper-record";

    /// <summary>A log, or what is to be added to one.</summary>
    public const string Log = "log";

    /// <summary>Readings that are whole and yet cannot be answered: too few, or not of one thing.</summary>
    public const string Question = "question";

    /// <summary>An option or argument of the command line.</summary>
    public const string Option = "option";
}
