using System.Security.Cryptography;

namespace CalibGeom.Objects;

/// <summary>A production part that stands on the same plate. Immutable.</summary>
/// <param name="Name">The name of its file.</param>
/// <param name="Sha256">SHA-256 of the file, 64 lower-case hex digits.</param>
public sealed record ObjectPart(string Name, string Sha256)
{
    /// <summary>The part that a file holds.</summary>
    /// <param name="name">What it is called.</param>
    /// <param name="stream">The bytes of its file; stays open.</param>
    /// <exception cref="IOException">Reading failed.</exception>
    public static ObjectPart Of(string name, Stream stream)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        ArgumentNullException.ThrowIfNull(stream);
        return new ObjectPart(name, Convert.ToHexStringLower(SHA256.HashData(stream)));
    }
}
