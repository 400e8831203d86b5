namespace CalibGeom.Formats.ThreeMf;

/// <summary>What a 3MF says about itself beside its meshes. Immutable.</summary>
public sealed record ThreeMfContent
{
    /// <summary>The Title metadata; left out when empty. Default empty.</summary>
    public string Title { get; init; } = "";

    /// <summary>The Application metadata: the program and its version; left out when empty. Default empty.</summary>
    public string Application { get; init; } = "";

    /// <summary>
    /// The whole spec as JSON text, carried as namespaced metadata so that the object can be built again from the file;
    /// null to leave it out, the default.
    /// </summary>
    public string? SpecJson { get; init; }

    /// <summary>A picture of the objects as PNG, which file managers show; null to leave it out, the default.</summary>
    public byte[]? Thumbnail { get; init; }
}
