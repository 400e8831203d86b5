namespace CalibGeom.Objects.Families;

/// <summary>What became of one object of a family. Immutable.</summary>
public sealed record FamilyRow
{
    /// <summary>Its number, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>The value on each axis.</summary>
    public required IReadOnlyList<string> Values { get; init; }

    /// <summary>The digest of its spec; empty when its values do not go together.</summary>
    public required string Digest { get; init; }

    /// <summary>The version of the geometry it was made with.</summary>
    public required int GeometryVersion { get; init; }

    /// <summary>The name of its mesh file, beside the index; empty when the design cannot work.</summary>
    public required string File { get; init; }

    /// <summary>The length of that file; 0 without one.</summary>
    public long Bytes { get; init; }

    /// <summary>How many errors the design rules found.</summary>
    public required int Errors { get; init; }

    /// <summary>How many warnings they found.</summary>
    public required int Warnings { get; init; }

    /// <summary>The first error or warning, or an empty text.</summary>
    public string Finding { get; init; } = "";

    /// <summary>The number of its triangles; 0 without a mesh.</summary>
    public int Triangles { get; init; }

    /// <summary>Its volume, mm3; 0 without a mesh.</summary>
    public double Volume { get; init; }
}
