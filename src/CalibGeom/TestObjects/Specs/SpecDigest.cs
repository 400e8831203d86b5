using System.Security.Cryptography;

namespace CalibGeom.TestObjects.Specs;

/// <summary>The digest that ties an object, its feature table and readings of it together.</summary>
public static class SpecDigest
{
    /// <summary>
    /// The first 16 hex digits, in lower case, of the SHA-256 of a spec's canonical form
    /// (<see cref="SpecJson.ToCanonicalBytes"/>). Equal specs
    /// have equal digests, however they were written; the order of names, the spelling of numbers, comments and the
    /// culture do not matter.
    /// </summary>
    /// <param name="spec">The spec.</param>
    public static string Of(TestObjectSpec spec) =>
        Convert.ToHexStringLower(SHA256.HashData(SpecJson.ToCanonicalBytes(spec)))[..16];
}
