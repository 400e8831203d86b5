namespace CalibGeom.Pictures.Drawings;

/// <summary>Which end of a text stands at its point.</summary>
public enum TextAnchor
{
    /// <summary>The text begins at the point.</summary>
    Start,

    /// <summary>The text is centred on the point.</summary>
    Middle,

    /// <summary>The text ends at the point.</summary>
    End,
}
