using CalibGeom.Features.Files;
using FsCheck.Xunit;

namespace CalibGeom.Features.Tests.Files;

public class BoundedLineTests
{
    /// <summary>What is within the limit comes as the framework reads it, where lines end in LF or CRLF.</summary>
    [Property(MaxTest = 300)]
    public bool ShortLinesComeWhole(string?[] lines, bool carriageReturns, bool ends)
    {
        string[] plain =
        [
            .. lines.Select(l =>
                (l ?? "").Replace("\r", "", StringComparison.Ordinal).Replace("\n", "", StringComparison.Ordinal)
            ),
        ];
        string end = carriageReturns ? "\r\n" : "\n";
        string text = string.Join(end, plain) + (ends ? end : "");
        using var expected = new StringReader(text);
        using var reader = new StringReader(text);
        int most = plain.Append("").Max(l => l.Length);
        while (expected.ReadLine() is { } line)
            if (BoundedLine.Read(reader, most) != line)
                return false;
        return BoundedLine.Read(reader, most) is null;
    }

    [Theory]
    [InlineData("abcd\n", "abcd")]
    [InlineData("abcd\r\n", "abcd")]
    [InlineData("abcd", "abcd")]
    [InlineData("abcde\n", "abcde")]
    [InlineData("abcdefghij", "abcde")]
    public void OneCharacterMoreTellsALineThatIsTooLong(string text, string expected)
    {
        using var reader = new StringReader(text);
        Assert.Equal(expected, BoundedLine.Read(reader, 4));
    }
}
