using System.Buffers.Binary;
using System.Numerics;

namespace CalibGeom.TestObjects.Specs;

/// <summary>
/// SHA-256 of a few kilobytes (FIPS 180-4, section 6.2). The framework's own asks the operating system, and on Linux
/// loading OpenSSL for one digest takes a tenth of what <c>calibgeom make</c> takes as native code; for whole files
/// the framework's is used.
/// </summary>
internal static class Sha256
{
    private const int Block = 64;

    // The fractions of the square roots of the first eight primes, 32 bits each.
    private static ReadOnlySpan<uint> Start =>
        [0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19];

    // The fractions of the cube roots of the first 64 primes, 32 bits each.
    private static ReadOnlySpan<uint> Rounds =>
        [
            0x428a2f98,
            0x71374491,
            0xb5c0fbcf,
            0xe9b5dba5,
            0x3956c25b,
            0x59f111f1,
            0x923f82a4,
            0xab1c5ed5,
            0xd807aa98,
            0x12835b01,
            0x243185be,
            0x550c7dc3,
            0x72be5d74,
            0x80deb1fe,
            0x9bdc06a7,
            0xc19bf174,
            0xe49b69c1,
            0xefbe4786,
            0x0fc19dc6,
            0x240ca1cc,
            0x2de92c6f,
            0x4a7484aa,
            0x5cb0a9dc,
            0x76f988da,
            0x983e5152,
            0xa831c66d,
            0xb00327c8,
            0xbf597fc7,
            0xc6e00bf3,
            0xd5a79147,
            0x06ca6351,
            0x14292967,
            0x27b70a85,
            0x2e1b2138,
            0x4d2c6dfc,
            0x53380d13,
            0x650a7354,
            0x766a0abb,
            0x81c2c92e,
            0x92722c85,
            0xa2bfe8a1,
            0xa81a664b,
            0xc24b8b70,
            0xc76c51a3,
            0xd192e819,
            0xd6990624,
            0xf40e3585,
            0x106aa070,
            0x19a4c116,
            0x1e376c08,
            0x2748774c,
            0x34b0bcb5,
            0x391c0cb3,
            0x4ed8aa4a,
            0x5b9cca4f,
            0x682e6ff3,
            0x748f82ee,
            0x78a5636f,
            0x84c87814,
            0x8cc70208,
            0x90befffa,
            0xa4506ceb,
            0xbef9a3f7,
            0xc67178f2,
        ];

    /// <summary>The digest as 64 lower-case hex digits.</summary>
    internal static string ToHex(ReadOnlySpan<byte> data)
    {
        Span<uint> state = stackalloc uint[8];
        Start.CopyTo(state);
        byte[] padded = Padded(data);
        for (int at = 0; at < padded.Length; at += Block)
            Add(state, padded.AsSpan(at, Block));
        Span<byte> bytes = stackalloc byte[32];
        for (int i = 0; i < state.Length; i++)
            BinaryPrimitives.WriteUInt32BigEndian(bytes[(4 * i)..], state[i]);
        return Convert.ToHexStringLower(bytes);
    }

    /// <summary>A one, zeros, and the number of bits in the last eight bytes.</summary>
    private static byte[] Padded(ReadOnlySpan<byte> data)
    {
        byte[] padded = new byte[(data.Length + 9 + Block - 1) / Block * Block];
        data.CopyTo(padded);
        padded[data.Length] = 0x80;
        BinaryPrimitives.WriteInt64BigEndian(padded.AsSpan(padded.Length - 8), 8L * data.Length);
        return padded;
    }

    private static void Add(Span<uint> state, ReadOnlySpan<byte> block)
    {
        Span<uint> words = stackalloc uint[64];
        for (int t = 0; t < 16; t++)
            words[t] = BinaryPrimitives.ReadUInt32BigEndian(block[(4 * t)..]);
        for (int t = 16; t < 64; t++)
            words[t] = words[t - 16] + Small(words[t - 15], 7, 18, 3) + words[t - 7] + Small(words[t - 2], 17, 19, 10);
        uint a = state[0],
            b = state[1],
            c = state[2],
            d = state[3],
            e = state[4],
            f = state[5],
            g = state[6],
            h = state[7];
        for (int t = 0; t < 64; t++)
        {
            uint first = h + Large(e, 6, 11, 25) + ((e & f) ^ (~e & g)) + Rounds[t] + words[t];
            uint second = Large(a, 2, 13, 22) + ((a & b) ^ (a & c) ^ (b & c));
            (h, g, f, e, d, c, b, a) = (g, f, e, d + first, c, b, a, first + second);
        }
        ReadOnlySpan<uint> added = [a, b, c, d, e, f, g, h];
        for (int i = 0; i < added.Length; i++)
            state[i] += added[i];
    }

    private static uint Large(uint x, int a, int b, int c) =>
        BitOperations.RotateRight(x, a) ^ BitOperations.RotateRight(x, b) ^ BitOperations.RotateRight(x, c);

    private static uint Small(uint x, int a, int b, int shift) =>
        BitOperations.RotateRight(x, a) ^ BitOperations.RotateRight(x, b) ^ (x >> shift);
}
