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
    public void TooLittleMemoryInWorkOnSeveralCoresIsSaidInWordsToo() =>
        Assert.Contains(
            "not enough memory",
            Run(() => Parallel.Invoke(() => throw new OutOfMemoryException())).Error,
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

    /// <summary>What is left out is the middle: the end says what is wrong and what to do.</summary>
    [Fact]
    public void AMessageIsNeverLongerThanTwoThousandCharactersAndKeepsItsEnds()
    {
        string whole = CliRun.Of("make", "--object", "xyz").Error.Trim();
        string end = whole[(whole.IndexOf("xyz", StringComparison.Ordinal) + 3)..];
        Assert.InRange(end.Length, 20, 900);
        CliRun run = CliRun.Of("make", "--object", new string('x', 100_000));
        Assert.Equal(ExitCode.BadUse, run.ExitCode);
        Assert.InRange(run.Error.Length, 10, 2000);
        Assert.StartsWith("calibgeom make: xxx", run.Error, StringComparison.Ordinal);
        Assert.EndsWith(end, run.Error.TrimEnd(), StringComparison.Ordinal);
    }

    [Fact]
    public void AnEmojiIsNotCutInHalf()
    {
        string smiles = string.Concat(Enumerable.Repeat("\ud83d\ude00", 5000));
        foreach (string odd in new[] { "", "x" })
            Assert.DoesNotMatch(
                "(^|[^\ud800-\udbff])[\udc00-\udfff]|[\ud800-\udbff]([^\udc00-\udfff]|$)",
                CliRun.Of("make", "--object", odd + smiles).Error
            );
    }

    /// <summary>A trace is whole, however long: what caused the fault may stand anywhere in it.</summary>
    [Fact]
    public void TheTraceIsWholeWhenItIsAskedFor()
    {
        Environment.SetEnvironmentVariable(Failure.TraceVariable, "1");
        try
        {
            (int code, string said, string text) = Run(() => Deep(60), "--json");
            Assert.Equal(ExitCode.Fault, code);
            Assert.True(said.Length > 4000);
            Assert.Contains("the cause", said, StringComparison.Ordinal);
            Assert.Equal(61, said.Split('\n').Count(l => l.Contains(nameof(Deep) + "(", StringComparison.Ordinal)));
            Assert.Contains(nameof(CommandHost) + ".Run(", said, StringComparison.Ordinal);
            Assert.DoesNotContain("the cause", text, StringComparison.Ordinal);
        }
        finally
        {
            Environment.SetEnvironmentVariable(Failure.TraceVariable, null);
        }
    }

    private static void Deep(int more)
    {
        if (more == 0)
            throw new InvalidOperationException("seen", new InvalidCastException("the cause"));
        Deep(more - 1);
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
