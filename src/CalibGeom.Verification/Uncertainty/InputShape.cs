namespace CalibGeom.Verification.Uncertainty;

/// <summary>The distribution an input quantity is taken to have (JCGM 101, table 1).</summary>
public enum InputShape
{
    /// <summary>Gaussian.</summary>
    Normal,

    /// <summary>Student's t, scaled and shifted: the mean of a few observations.</summary>
    Student,

    /// <summary>Equal density between two limits.</summary>
    Rectangular,

    /// <summary>Symmetric triangle between two limits.</summary>
    Triangular,

    /// <summary>Symmetric trapezoid; the sum of two rectangles.</summary>
    Trapezoidal,

    /// <summary>Rectangle whose limits are themselves not known exactly.</summary>
    CurvilinearTrapezoid,

    /// <summary>U-shaped: a sine sampled at an unknown phase.</summary>
    Arcsine,
}
