using System.Text.Json.Nodes;

namespace CalibGeom.Cli.Tests;

public class AxisPairTests
{
    [Fact]
    public void WhatHoldsAlongXAndYAlikeIsSaidOnce()
    {
        using var folder = new TemporaryFolder();
        folder.Write("even.json", "{\"process\":{\"pixelPitch\":0.035,\"layerHeight\":0.05}}");
        folder.Write("uneven.json", "{\"process\":{\"pixelPitch\":[0.035,0.04],\"layerHeight\":0.05}}");
        string even = CliRun.Of("make", "--object", folder["even.json"], "-o", folder["even.stl"]).Out,
            uneven = CliRun.Of("make", "--object", folder["uneven.json"], "-o", folder["uneven.stl"]).Out;
        Assert.Contains("note [pixels] box2.outside.x and .y: 11.2 mm is 320 pixels.", even, StringComparison.Ordinal);
        Assert.Contains("joint1.fit: The clearance along x and y becomes", even, StringComparison.Ordinal);
        Assert.Contains("note [pixels] box2.outside.x: 11.2 mm is 320 pixels.", uneven, StringComparison.Ordinal);
        Assert.Contains("note [pixels] box2.outside.y: 11.2 mm is 280 pixels.", uneven, StringComparison.Ordinal);
        Assert.DoesNotContain("and .y", uneven, StringComparison.Ordinal);
    }

    [Fact]
    public void JsonSaysTheAxisAlone()
    {
        JsonArray findings = JsonNode.Parse(
            CliRun.Of("make", "--set", "process.pixelPitch=0.035", "--check", "--json").Out
        )!["findings"]!.AsArray();
        string Axes(string subject) =>
            string.Join(
                " ",
                findings
                    .Where(f => (string?)f!["subject"] == subject)
                    .Select(f => (string?)f!["axis"] ?? "-")
                    .Distinct()
            );
        Assert.Equal("x", Axes("box2.outside.x"));
        Assert.Equal("y", Axes("box2.outside.y"));
        Assert.Equal("-", Axes("squeeze"));
    }

    [Fact]
    public void AHoleForAWantedClearanceIsGivenForEachAxisWhereTheyDiffer()
    {
        using var folder = new TemporaryFolder();
        folder.Write(
            "r.csv",
            "feature,value\nbox1.outside.x,8.06\nbox2.inside.x,8.04\nspan.x,40.06\nbox1.outside.y,8.02\nbox2.inside.y,8.08\nspan.y,25.02\n"
        );
        string text = CliRun
            .Of("predict", folder["r.csv"], "--object", "standard", "--for", "20/20.2", "--want", "0.05")
            .Out;
        Assert.Matches(@"by axis: X hole 20\.\d{3} or peg \d+\.\d{3}; Y hole 20\.\d{3} or peg \d+\.\d{3}\n", text);
    }
}
