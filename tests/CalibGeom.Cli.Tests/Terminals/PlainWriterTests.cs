using CalibGeom.Cli.Shared;
using CalibGeom.Cli.Shared.Terminals;
using FsCheck.Xunit;

namespace CalibGeom.Cli.Tests.Terminals;

/// <summary>What is said: nothing a terminal obeys, folded at its width, in colour where that is welcome.</summary>
public class PlainWriterTests
{
    [Property]
    public void NothingThatATerminalObeysIsEverWritten(string text, char c)
    {
        using var into = new StringWriter();
        var writer = PlainWriter.Over(into);
        writer.Write(text);
        writer.Write(c);
        writer.WriteLine("\u001b[2J" + text + "\u202e" + c);
        Assert.DoesNotContain(into.ToString(), k => char.IsControl(k) && k is not ('\r' or '\n' or '\t'));
        Assert.DoesNotContain(into.ToString(), k => k is '\u202e' or '\u2066' or '\u200f');
    }

    [Fact]
    public void WhatItLeavesOutStandsAsJsonSpellsIt()
    {
        using var into = new StringWriter();
        PlainWriter.Over(into).Write("{\"a\": \"x\u202e\u009b\"}");
        Assert.Equal("{\"a\": \"x\\u202E\\u009B\"}", into.ToString());
        Assert.Equal("x\u202e\u009b", (string?)System.Text.Json.Nodes.JsonNode.Parse(into.ToString())!["a"]);
    }

    /// <summary>What follows a carriage return would be written over what stands there.</summary>
    [Fact]
    public void ACarriageReturnThatEndsNoLineIsSpeltOut()
    {
        Assert.Equal("a\r\nb\nc\\u000Dd\\u000D", PlainWriter.Plain("a\r\nb\nc\rd\r"));
        Assert.DoesNotContain('\r', CliRun.Of("make", "--object", "x\ry.json").Error);
    }

    [Theory]
    [InlineData(40)]
    [InlineData(72)]
    public void OnATerminalLinesAreFoldedAtItsWidth(int width)
    {
        using var into = new StringWriter();
        var writer = PlainWriter.OnTerminal(into, width, colours: false);
        FindingText.Write(writer, [Long(Severity.Warning)]);
        string[] lines = into.ToString().TrimEnd().Split('\n');
        Assert.True(lines.Length >= 4);
        Assert.All(lines, l => Assert.True(l.TrimEnd().Length <= width, l));
        Assert.Equal(
            Words(Long(Severity.Warning)),
            lines
                .SelectMany(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries))
                .Select(w => w.Trim())
                .Where(w => w.Length > 0)
        );
        Assert.Contains(lines, l => l.StartsWith("    Look", StringComparison.Ordinal));
    }

    [Fact]
    public void SeverityHasAColourOnATerminalAndNoneElsewhere()
    {
        foreach (Severity severity in Enum.GetValues<Severity>())
        {
            using StringWriter coloured = new(),
                plain = new();
            FindingText.Write(PlainWriter.OnTerminal(coloured, 80, colours: true), [Long(severity)]);
            FindingText.Write(PlainWriter.OnTerminal(plain, 80, colours: false), [Long(severity)]);
            Assert.Matches("^\u001b\\[[0-9;]+m" + FindingText.Word(severity) + "\u001b\\[0m ", coloured.ToString());
            Assert.DoesNotContain('\u001b', plain.ToString());
        }
    }

    [Fact]
    public void NoColorIsHonoured()
    {
        string? before = Environment.GetEnvironmentVariable("NO_COLOR");
        try
        {
            Environment.SetEnvironmentVariable("NO_COLOR", "1");
            Assert.False(Screen.Colours);
            Environment.SetEnvironmentVariable("NO_COLOR", null);
            Assert.Equal(Environment.GetEnvironmentVariable("TERM") != "dumb", Screen.Colours);
        }
        finally
        {
            Environment.SetEnvironmentVariable("NO_COLOR", before);
        }
    }

    [Fact]
    public void TablesAreAlignedAndNeverFoldedInAFile()
    {
        using var into = new StringWriter();
        TextTable.Write(
            PlainWriter.Over(into),
            [
                ["what", "mm", "n"],
                ["a [name] in brackets", "8.050", "1"],
                [new string('x', 300), "10.000", "12"],
            ]
        );
        string wide = new('x', 300);
        Assert.Equal(
            $"what{new string(' ', 296)}      mm   n\na [name] in brackets{new string(' ', 280)}   8.050   1\n{wide}  10.000  12\n",
            into.ToString().ReplaceLineEndings("\n")
        );
    }

    [Fact]
    public void ATableFitsATerminal()
    {
        using var into = new StringWriter();
        TextTable.WriteLeft(
            PlainWriter.OnTerminal(into, 40, colours: false),
            [
                ["add", "Append one print to a log; nothing that stands in it is rewritten."],
            ]
        );
        Assert.All(into.ToString().Split('\n'), l => Assert.True(l.TrimEnd().Length <= 40, l));
    }

    private static IEnumerable<string> Words(Finding f) =>
        $"{FindingText.Word(f.Severity)} [{f.Rule}] {f.Subject}: {f.Message} {f.Remedy}".Split(' ');

    private static Finding Long(Severity severity) =>
        new(
            "some-rule",
            severity,
            "box1.outside.x",
            "This sentence is longer than any narrow terminal is wide, so that it has to be folded somewhere in it.",
            "Look at it again, and again, until every one of its words stands on a line that is not too long."
        );
}
