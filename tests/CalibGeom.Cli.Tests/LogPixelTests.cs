using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Logs;

namespace CalibGeom.Cli.Tests;

/// <summary>The pixel pitch goes from the object's spec through the log into the advice.</summary>
public class LogPixelTests
{
    [Fact]
    public void ThePitchOfTheSpecMakesOffsetsWholePixels()
    {
        using var folder = new TemporaryFolder();
        Done("make", "--object", "standard", "--set", "process.pixelPitch=0.04,0.05", "-o", folder["a.stl"]);
        string print = folder.Write("print.csv", "feature,value\nbox1.outside.x,8.1\nbox2.inside.x,8.02\n");
        string[] add = ["log", "add", print, "--object", folder["a.object.json"], "--to", folder["a.jsonl"]];
        Done([.. add, "--time", "2.5", "--rest", "3"]);
        Assert.Equal(new PerAxis(0.04, 0.05), TrialLog.Read(folder["a.jsonl"]).Trials.Single().Pixel);
        Assert.Contains("pixel [0.04, 0.05] mm", Done("log", "show", folder["a.jsonl"]), StringComparison.Ordinal);
        JsonNode next = JsonNode.Parse(Done("tune", folder["a.jsonl"], "--json"))!["result"]!["next"]!;
        int pixels = (int)next["pixels"]!;
        Assert.True(pixels < 0);
        Assert.Equal(0.045 * pixels, (double)next["settings"]!["edgeOffset"]!, 1e-9);
    }

    [Fact]
    public void WhatTheCaliperIsOffInAllPrintsIsToldBesideTheTable()
    {
        using var folder = new TemporaryFolder();
        string print = folder.Write("print.csv", "feature,value\nbox1.outside.x,8.02\nbox2.inside.x,8.08\n");
        Done("log", "add", print, "--object", "standard", "--to", folder["a"], "--time", "2.5", "--rest", "1");
        double bias = TrialLog.Read(folder["a"]).Trials.Single().GrowthX!.Bias;
        string said = FormattableString.Invariant($"up to {1.959964 * bias:0.000} mm, is not in it");
        Assert.Contains(said, Done("log", "show", folder["a"]), StringComparison.Ordinal);
    }

    private static string Done(params string[] args)
    {
        CliRun run = CliRun.Of(args);
        Assert.True(run.ExitCode == ExitCode.Done, run.Error);
        return run.Out;
    }
}
