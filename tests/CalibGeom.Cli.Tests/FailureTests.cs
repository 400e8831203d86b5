using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;

namespace CalibGeom.Cli.Tests;

/// <summary>What is said when something goes wrong that nobody foresaw.</summary>
public class FailureTests
{
    [Fact]
    public void AFaultOfTheProgramIsOneLineAndACodeOfItsOwn()
    {
        (int code, string said, _) = Run(() => throw new InvalidCastException("secret thoughts"));
        Assert.Equal(ExitCode.Fault, code);
        Assert.Matches("^calibgeom make: this is a fault of the program.*InvalidCastException", said);
        Assert.Single(said.TrimEnd().Split('\n'));
        Assert.DoesNotContain("secret", said, StringComparison.Ordinal);
    }

    [Fact]
    public void TooLittleMemoryIsSaidInWords() =>
        Assert.Contains(
            "not enough memory",
            Run(() => throw new OutOfMemoryException()).Error,
            StringComparison.Ordinal
        );

    [Fact]
    public void WithJsonAFaultStandsInTheEnvelopeToo()
    {
        (int code, _, string text) = Run(() => throw new InvalidCastException(), "--json");
        JsonNode envelope = JsonNode.Parse(text)!;
        Assert.Equal((ExitCode.Fault, "program-fault"), (code, (string?)envelope["findings"]![0]!["rule"]));
        Assert.Equal("make", (string?)envelope["command"]);
    }

    [Fact]
    public void AMessageIsNeverLongerThanTwoThousandCharacters()
    {
        CliRun run = CliRun.Of("make", "--object", new string('x', 100_000));
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.InRange(run.Error.Length, 10, 2100);
    }

    [Fact]
    public void AnEscapeInANameIsShownAndNotObeyed()
    {
        CliRun run = CliRun.Of("make", "--object", "x\u001b[2Jy\u202e");
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.Contains("x\\u001B[2Jy\\u202E", run.Error, StringComparison.Ordinal);
    }

    private static (int Code, string Error, string Out) Run(Action fault, params string[] more)
    {
        using StringWriter error = new(),
            output = new();
        var io = new CommandIo
        {
            Out = output,
            Error = error,
            OpenInput = () =>
            {
                fault();
                return Stream.Null;
            },
            OpenOutput = () => Stream.Null,
        };
        return (CommandHost.Run(["make", "--object", "-", .. more], io), error.ToString(), output.ToString());
    }
}
