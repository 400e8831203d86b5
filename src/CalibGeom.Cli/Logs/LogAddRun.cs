using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.TestObjects;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Logs;

/// <summary>One run of <c>log add</c>.</summary>
internal sealed class LogAddRun(CommandIo io, ReadingSet readings, TestObject made)
{
    private IReadOnlyList<string> taken = [];
    private IReadOnlyList<Finding> findings = [];

    internal required string Path { get; init; }

    internal required TrialEntry Said { get; init; }

    internal bool Again { get; init; }

    internal bool Yes { get; init; }

    internal bool Json { get; init; }

    internal int Run()
    {
        LogEntry added = TrialLog.Append(Path, Make);
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
        var process = new ProcessFacts(
            made.Spec.Process?.LayerHeight,
            made.Spec.Process?.BaseLayers,
            made.Spec.Process?.BaseTime
        );
        FilledEntry filled = EntryFiller.Fill(Said, process, readings.State, log.Trials.LastOrDefault());
        Trial trial = TrialReadings.ToTrial(made.Features, readings, filled.Settings, filled.Conditions) with
        {
            Cycle = filled.Cycle,
            Date = Said.Date,
            LayersSince = Said.LayersSince,
            HoursSince = Said.HoursSince,
        };
        Ask(TrialDoubts.Of(trial, log));
        taken = filled.Taken;
        findings = [.. log.Findings, .. TrialReadings.FindingsOf(made.Features, readings)];
        return trial;
    }

    /// <exception cref="InputException">A doubt that nobody has answered.</exception>
    private void Ask(IReadOnlyList<Finding> doubts)
    {
        string[] open = doubts
            .Where(d => d.Rule == TrialDoubts.SameReadings ? !Again : !Yes)
            .Select(d => $"{d.Message} {d.Remedy} ({(d.Rule == TrialDoubts.SameReadings ? "--again" : "--yes")})")
            .ToArray();
        if (open.Length > 0)
            throw new InputException(string.Join(" ", open) + " Nothing was added.");
    }
}
