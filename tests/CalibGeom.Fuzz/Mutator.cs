using System.Text;

namespace CalibGeom.Fuzz;

/// <summary>Changes bytes of a file in ways that readers trip over. The same seed makes the same changes.</summary>
internal sealed class Mutator(int seed)
{
    private static readonly byte[][] Tokens =
    [
        .. new[]
        {
            "0",
            "-0",
            "-1",
            "1e308",
            "1e999",
            "-1e-320",
            "NaN",
            "Infinity",
            "2147483648",
            "4294967296",
            "99999999999999999999",
            "0.1.2",
            "1,5",
            "null",
            "true",
            "{}",
            "[]",
            "[[[[[[[[",
            "\"",
            "\\",
            "\\ud800",
            "\\u0000",
            "\0",
            "\r",
            "\n",
            "\r\n\n",
            ",,,,",
            ";",
            "#",
            "# digest ",
            "=",
            "//",
            "/*",
            "<",
            "</",
            "<!DOCTYPE x [<!ENTITY y 'z'>]>",
            "<![CDATA[",
            "&#x0;",
            "&y;",
            "\u001B[31m",
            "\u202E",
            "\uFEFF",
            "=1+1",
            "@x",
            new string('9', 400),
            new string('x', 3000),
            "facet",
            "endsolid",
            "f 1 2 3\n",
            "f -1 -2 0\n",
            "vertex",
            "objectid=\"2\"",
            "box1.outside.x",
            "column1.stood,plate",
        }.Select(Encoding.UTF8.GetBytes),
        [0xFF, 0xFE],
        [0xED, 0xA0, 0x80],
        [0xC3],
        [0, 0, 0, 0],
        [0xFF, 0xFF, 0xFF, 0x7F],
        [0, 0, 0x80, 0x7F],
        [0x50, 0x4B, 5, 6],
    ];

    private readonly Random random = new(seed);

    /// <summary>One to eight changes.</summary>
    internal byte[] Changed(byte[] original, byte[] other)
    {
        var bytes = new List<byte>(original);
        for (int changes = 1 << random.Next(4); changes > 0; changes--)
            Change(bytes, other);
        return [.. bytes];
    }

    private void Change(List<byte> bytes, byte[] other)
    {
        int at = random.Next(bytes.Count + 1),
            length = Math.Min(1 << random.Next(8), bytes.Count - at);
        switch (random.Next(9))
        {
            case 0 when at < bytes.Count:
                bytes[at] ^= (byte)(1 << random.Next(8));
                break;
            case 1 when at < bytes.Count:
                bytes[at] = (byte)random.Next(256);
                break;
            case 2:
                bytes.RemoveRange(at, length);
                break;
            case 3:
                bytes.InsertRange(random.Next(bytes.Count + 1), bytes.GetRange(at, length));
                break;
            case 4 when random.Next(4) == 0:
                bytes.RemoveRange(at, bytes.Count - at);
                break;
            case 5:
                int from = random.Next(other.Length);
                bytes.InsertRange(at, other.AsSpan(from, Math.Min(1 << random.Next(8), other.Length - from)).ToArray());
                break;
            case 6:
                ReplaceNumber(bytes, at);
                break;
            default:
                bytes.InsertRange(at, Tokens[random.Next(Tokens.Length)]);
                break;
        }
    }

    /// <summary>A token instead of the word or number that begins next.</summary>
    private void ReplaceNumber(List<byte> bytes, int at)
    {
        while (at < bytes.Count && !char.IsAsciiLetterOrDigit((char)bytes[at]))
            at++;
        int end = at;
        while (
            end < bytes.Count && (char.IsAsciiLetterOrDigit((char)bytes[end]) || bytes[end] is (byte)'.' or (byte)'-')
        )
            end++;
        bytes.RemoveRange(at, end - at);
        bytes.InsertRange(at, Tokens[random.Next(Tokens.Length)]);
    }
}
