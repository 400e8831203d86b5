using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tests.Tuning;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace CalibGeom.Verification.Tests.Logs;

public sealed class TrialLogTests : IDisposable
{
    private readonly string folder = Directory.CreateTempSubdirectory("calibgeom-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Property(MaxTest = 50)]
    public Property ALineReadsBackAsTheSameTrial() =>
        Prop.ForAll(
            Gen.Choose(1, 1000).ArrayOf(6).ToArbitrary(),
            n =>
            {
                Trial trial = Full(n);
                Trial back = LogText.Read(TrialLog.ToLine(trial)).Trials.Single();
                return TrialLog.ToLine(back) == TrialLog.ToLine(trial)
                    && back.Settings == trial.Settings
                    && back.Conditions == trial.Conditions
                    && back.GrowthX == trial.GrowthX
                    && back.Cycle == trial.Cycle
                    && back.Date == trial.Date
                    && back.Place == trial.Place
                    && back.Pixel == trial.Pixel
                    && (back.Digest, back.LayersSince, back.HoursSince)
                        == (trial.Digest, trial.LayersSince, trial.HoursSince)
                    && back.Nominals["box1.outside.x"] == 8
                    && back.HasSameReadings(trial)
                    && back.Columns.SequenceEqual(trial.Columns)
                    && back.Joints.SequenceEqual(trial.Joints)
                    && back.Slots!.Open == trial.Slots!.Open
                    && back.Readings["box1.outside.x"].SequenceEqual([8.01, 8.02]);
            }
        );

    [Fact]
    public void AppendingRewritesNothing()
    {
        string path = Path.Combine(folder, "log.jsonl");
        string first = "  {\"time\": 2, \"layer\": 0.05}  \r\n\n{\"layer\":0.05,\"time\":2.2}";
        File.WriteAllText(path, first);
        Assert.Equal(3, TrialLog.Append(path, Full([1, 2, 3, 4, 5, 6])).Number);
        string text = File.ReadAllText(path);
        Assert.StartsWith(first + "\n{", text, StringComparison.Ordinal);
        Assert.EndsWith("}\n", text, StringComparison.Ordinal);
        Assert.Equal(4, TrialLog.Append(path, Full([1, 2, 3, 4, 5, 6])).Number);
        Assert.Equal([2, 2.2, 0.1, 0.1], TrialLog.Read(path).Trials.Select(t => t.Settings.Time));
    }

    [Fact]
    public void NothingIsAppendedToWhatIsNoLog()
    {
        string path = Path.Combine(folder, "notes.txt");
        File.WriteAllText(path, "buy resin\n");
        Assert.Throws<InputException>(() => TrialLog.Append(path, Full([1, 2, 3, 4, 5, 6])));
        Assert.Equal("buy resin\n", File.ReadAllText(path));
        Assert.Throws<InputException>(() => TrialLog.Append(folder, Full([1, 2, 3, 4, 5, 6])));
        Assert.Throws<InputException>(() =>
            TrialLog.Append(Path.Combine(folder, "none", "log"), Full([1, 2, 3, 4, 5, 6]))
        );
    }

    [Theory]
    [InlineData("{\"time\":2}", "layer")]
    [InlineData("{\"layer\":0.05}", "time")]
    [InlineData("{\"time\":2,\"layer\":0.05,\"expsoure\":3}", "expsoure")]
    [InlineData("{\"time\":\"2\",\"layer\":0.05}", "$.time")]
    [InlineData("{\"time\":0,\"layer\":0.05}", "exposure time must be above 0")]
    [InlineData("{\"time\":2,\"rest\":-1,\"layer\":0.05}", "rest time must be 0 to 60")]
    [InlineData("{\"time\":2,\"layer\":0.05,\"state\":\"wet\"}", "washed, dry, post-cured")]
    [InlineData("{\"time\":2,\"layer\":0.05,\"orientation\":45}", "0 or 90")]
    [InlineData("{\"time\":2,\"layer\":0.05,\"date\":\"1.3.2026\"}", "2026-03-01")]
    [InlineData(
        "{\"time\":2,\"layer\":0.05,\"joints\":[{\"id\":\"joint1\",\"designed\":0.05,\"fit\":\"snug\"}]}",
        "refuses, binds, slides, rattles"
    )]
    [InlineData(
        "{\"time\":2,\"layer\":0.05,\"columns\":[{\"diameter\":0.4,\"stood\":\"yes\"}]}",
        "lost, plate, wash, cure"
    )]
    [InlineData("{\"time\":2,\"layer\":0.05,\"slots\":{\"heights\":[0.2,0.1],\"open\":1}}", "must rise")]
    [InlineData("{\"time\":2,\"layer\":0.05,\"slots\":{\"heights\":[0.1,0.2],\"open\":3}}", "0 to 2")]
    [InlineData(
        "{\"time\":2,\"layer\":0.05,\"growthX\":{\"value\":0.01,\"uncertainty\":0}}",
        "uncertainty of the growth"
    )]
    [InlineData("{\"time\":2,\"layer\":0.05,\"resin\":null}", "resin")]
    [InlineData("[1,2]", "no trial")]
    [InlineData("{\"time\":2,}", "no trial")]
    [InlineData("{\"time\":2,\"layer\":0.05,\"place\":{\"x\":1,\"y\":2,\"turn\":45}}", "0 or 90")]
    [InlineData("{\"time\":2,\"layer\":0.05,\"layersSince\":-1}", "layers since")]
    [InlineData("{\"undo\":2}", "takes back trial 2, but 1")]
    [InlineData("{\"undo\":\"1\"}", "number of the trial")]
    [InlineData("{\"undo\":1,\"why\":\"x\"}", "number of the trial")]
    public void ABadLineIsNamed(string line, string said)
    {
        InputException e = Assert.Throws<InputException>(() =>
            LogText.Read("{\"time\":2,\"layer\":0.05}\n" + line, "my.jsonl")
        );
        Assert.Contains("my.jsonl:2", e.Message, StringComparison.Ordinal);
        Assert.Contains(said, e.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', e.Message);
    }

    [Fact]
    public void AMissingLogIsSaid() =>
        Assert.Contains(
            "There is no log",
            Assert.Throws<InputException>(() => TrialLog.Read(Path.Combine(folder, "x"))).Message,
            StringComparison.Ordinal
        );

    private static Trial Full(int[] n) =>
        new(
            new ExposureSettings(n[0] / 10.0, n[1] / 100.0, n[2] / 1e5),
            new TrialConditions(
                0.05,
                "Demo \"grey\" é",
                "bench",
                (PartState)(n[3] % 3),
                n[3] % 2 == 0,
                n[4] % 2 * 90,
                23.5,
                24
            )
            {
                Bottle = "7",
                Film = "second",
                Screen = "first",
            }
        )
        {
            Digest = "0123456789abcdef",
            Place = new PlateSpot("A1", n[0] / 10.0, -n[1] / 10.0, n[2] % 2 * 90),
            LayersSince = n[3] % 3 == 0 ? null : n[3],
            HoursSince = n[4] / 8.0,
            Nominals = new Dictionary<string, double> { ["box1.outside.x"] = 8 },
            Date = new DateOnly(2026, 3, 1).AddDays(n[4]),
            Cycle = new LayerCycle(n[5], 25.5, 7.25),
            Instrument = "cal",
            Pixel = n[5] % 3 == 0 ? null : new PerAxis(0.04, n[5] % 3 == 1 ? 0.04 : 0.05),
            GrowthX = new GrowthReading(n[0] / 1e5, 0.002, 0.001),
            Joints =
            [
                new JointOutcome("joint1", 0.05, (FeltFit)(n[0] % 4)),
                new JointOutcome("joint2", 0.06, null, 0.36),
            ],
            Columns = [new ColumnOutcome(0.4, (ColumnStage)(n[1] % 4), "column1", 1.6)],
            Slots = Make.Slots(n[2] % 9),
            Readings = new Dictionary<string, IReadOnlyList<double>> { ["box1.outside.x"] = [8.01, 8.02] },
        };
}
