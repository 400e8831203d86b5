using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Objects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Logs;

/// <summary>One run of <c>log add</c>.</summary>
internal sealed class LogAddRun(CommandIo io, ReadingSet readings, FoundObject found)
{
    private IReadOnlyList<string> taken = [];
    private IReadOnlyList<Finding> findings = [];

    internal required string Path { get; init; }

    /// <summary>What is odd about the caliper records of the readings.</summary>
    internal required IReadOnlyList<Finding> Records { get; init; }

    internal required TrialEntry Said { get; init; }

    internal bool Again { get; init; }

    internal bool Yes { get; init; }

    internal bool Json { get; init; }

    internal int Run()
    {
        WrongFile.RequireNoOther(Path, InputKind.Log);
        LogEntry added = TrialLog.Append(Path, Make);
        io.Written();
        if (Json)
            Envelope.Write(
                io.Out,
                "log add",
                findings,
                new JsonObject
                {
                    ["log"] = Path,
                    ["number"] = added.Number,
                    ["taken"] = new JsonArray(taken.Select(t => (JsonNode)t).ToArray()),
                    ["trial"] = JsonNode.Parse(TrialLog.ToLine(added.Trial)),
                }
            );
        else
        {
            io.Out.WriteLine($"Trial {added.Number} ({added.Trial.Settings}) added to {Path}.");
            if (taken.Count > 0)
                io.Out.WriteLine($"Taken from the last trial: {string.Join(", ", taken)}.");
            FindingText.Write(io.Out, findings);
        }
        return ExitCode.Done;
    }

    private Trial Make(TrialLog log)
    {
        ProcessSpec? known = found.Object.Process;
        var process = new ProcessFacts(known?.LayerHeight, known?.BaseLayers, known?.BaseTime, known?.PixelPitch);
        // A coupon of a ladder has its own exposure.
        double? time = Said.Time ?? Coupon?.Exposure;
        Require(time, log, "exposure", "--time");
        Require(Said.Rest, log, "rest", "--rest");
        var made = NewTrial.Of(log, Said with { Time = time }, found.Object.Features, readings, process, Place());
        Ask(made.Doubts);
        taken = made.Taken;
        findings =
        [
            .. log.Findings,
            .. Records,
            .. found.Assumed is { } assumed ? [assumed] : Array.Empty<Finding>(),
            .. made.Findings,
        ];
        return made.Trial;
    }

    /// <exception cref="InputException">A setting is not said, and no print of the log tells it.</exception>
    private static void Require(double? setting, TrialLog log, string what, string option)
    {
        if (setting is null && log.Trials.Count == 0)
            throw new InputException(
                InputIds.Option,
                $"The {what} is not known: the log has no print yet to take it from. Say what was set, in seconds: "
                    + $"{option} S."
            );
    }

    /// <summary>Where the coupon stood that the readings are of.</summary>
    private PlateSpot? Place() => Coupon is { } c ? new PlateSpot(c.Label, c.X, c.Y, c.Turn) : null;

    /// <summary>The coupon that the readings are of, or null.</summary>
    private ObjectCoupon? Coupon => found.Object.Coupon(readings.Coupons.Count == 1 ? readings.Coupons[0] : "");

    /// <exception cref="InputException">A doubt that nobody has answered.</exception>
    private void Ask(IReadOnlyList<Finding> doubts)
    {
        string[] open = doubts
            .Where(d => d.Rule == TrialDoubts.SameReadings ? !Again : !Yes)
            .Select(d => $"{d.Message} {d.Remedy} ({(d.Rule == TrialDoubts.SameReadings ? "--again" : "--yes")})")
            .ToArray();
        if (open.Length > 0)
            throw new InputException(InputIds.Option, string.Join(" ", open) + " Nothing was added.");
    }
}
