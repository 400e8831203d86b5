using System.Security.Cryptography;
using System.Text;
using CalibGeom.TestObjects.Specs;
using FsCheck.Xunit;

namespace CalibGeom.Tests.TestObjects;

public class Sha256Tests
{
    /// <summary>One block, two blocks: the examples that NIST publishes with FIPS 180-4 (from memory).</summary>
    [Theory]
    [InlineData("abc", "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad")]
    [InlineData(
        "abcdbcdecdefdefgefghfghighijhijkijkljklmklmnlmnomnopnopq",
        "248d6a61d20638b8e5c026930c3e6039a33ce45964ff2167f6ecedd419db06c1"
    )]
    public void PublishedExamplesComeOut(string text, string digest) =>
        Assert.Equal(digest, Sha256.ToHex(Encoding.ASCII.GetBytes(text)));

    [Fact]
    public void AllLengthsRoundABlockAgreeWithTheFramework()
    {
        byte[] bytes = [.. Enumerable.Range(0, 200).Select(i => (byte)(i * 37))];
        for (int length = 0; length <= bytes.Length; length++)
            Assert.Equal(ByFramework(bytes[..length]), Sha256.ToHex(bytes.AsSpan(0, length)));
    }

    [Property]
    public bool AnyBytesAgreeWithTheFramework(byte[] bytes) => Sha256.ToHex(bytes) == ByFramework(bytes);

    private static string ByFramework(byte[] bytes) => Convert.ToHexStringLower(SHA256.HashData(bytes));
}
