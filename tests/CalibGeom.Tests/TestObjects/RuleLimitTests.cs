using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.TestObjects;

/// <summary>Each rule with the value just on either side of its limit, and the value and limit that it tells.</summary>
public class RuleLimitTests
{
    public static TheoryData<string, string, double, double> Limits =>
        new()
        {
            // rule, parameter, value that is just found, value that is just not
            { "wall-too-thin", "nest.wall", 0.79, 0.81 },
            { "wall-too-thin", "squeeze.bar", 0.249, 0.251 },
            { "gap-too-narrow", "slots.heights", 0.099, 0.101 },
            { "gap-too-narrow", "squeeze.heights", 0.099, 0.101 },
            { "gauge-band-too-low", "nest.gaugeBand", 2.99, 3.01 },
            { "gauge-band-too-high", "nest.gaugeBand", 7.51, 7.49 },
            { "clearance-says-nothing", "nest.clearances", 0.0149, 0.0151 },
            { "column-load", "columns.headDiameter", 2.01, 1.99 },
            { "column-slender", "columns.height", 10.01, 9.99 },
            { "label-stroke", "labels.stroke", 0.299, 0.301 },
            { "label-height", "labels.height", 0.199, 0.201 },
            { "base-layers-thick", "process.layerHeight", 0.201, 0.199 },
            { "column-pixels", "process.pixelPitch", 0.084, 0.083 },
            { "wall-slender", "walls.height", 6.01, 5.99 },
            { "pin-slender", "pins.height", 20.01, 19.99 },
        };

    [Theory]
    [MemberData(nameof(Limits))]
    public void AValueBeyondTheLimitIsFoundAndOneWithinIsNot(string rule, string parameter, double found, double not)
    {
        Assert.DoesNotContain(Check(parameter, not), f => f.Rule == rule && f.Severity != Severity.Note);
        Finding finding = Check(parameter, found).First(f => f.Rule == rule && f.Severity != Severity.Note);
        Assert.NotEqual(0, Math.Sign(finding.Value!.Value - finding.Limit!.Value));
        Assert.Contains(
            FormattableString.Invariant($"{finding.Value.Value:0.###}"),
            finding.Message,
            StringComparison.Ordinal
        );
        Assert.Contains(
            FormattableString.Invariant($"the limit is {finding.Limit.Value:0.###}"),
            finding.Message,
            StringComparison.Ordinal
        );
    }

    private static IReadOnlyList<Finding> Check(string parameter, double value)
    {
        string text = FormattableString.Invariant($"{value}");
        string[] assignments = parameter switch
        {
            "slots.heights" => [$"slots.heights={text},0.4"],
            "squeeze.heights" => [$"squeeze.heights={text},0.4"],
            "nest.clearances" => [$"nest.clearances={text},0.05"],
            _ => [$"{parameter}={text}"],
        };
        return TestObject.Of(SpecJson.With(new TestObjectSpec(), assignments)).Findings;
    }
}
