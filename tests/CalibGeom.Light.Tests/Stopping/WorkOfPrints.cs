using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Maps;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Trends;
using CalibGeom.Verification.Tuning;

namespace CalibGeom.Light.Tests.Stopping;

/// <summary>What is worked out from readings and logs, of any size.</summary>
internal static class WorkOfPrints
{
    internal static Action<IProgress<double>, CancellationToken> Advice(int size)
    {
        Trial[] trials = Trials(4 * size);
        return (progress, stop) => Tuner.Run(trials, null, progress, stop);
    }

    internal static Action<IProgress<double>, CancellationToken> History(int size)
    {
        TuningResult result = Tuner.Run(Trials(size > 1 ? 20 : 3));
        return (progress, stop) => Tuner.History(result, progress, stop);
    }

    internal static Action<IProgress<double>, CancellationToken> TrendOfAll(int size)
    {
        TrendPoint[] points =
        [
            .. Enumerable
                .Range(0, 20 * size)
                .Select(i => new TrendPoint([new GaugeValue(Gauge.Growth, "x", 0.01 + 0.0003 * (i * 7 % 5), 0.004)])),
        ];
        return (progress, stop) => Trend.Run(points, null, progress, stop);
    }

    internal static Action<IProgress<double>, CancellationToken> TrendOfLog(int size)
    {
        LogEntry[] entries =
        [
            .. Enumerable.Range(0, 12 * size).Select(i => new LogEntry(i + 1, Trial(8 * i + i % 2), TakenBack: false)),
        ];
        return (progress, stop) => TrendAnswer.Of(entries, null, 6, progress, stop);
    }

    internal static Action<IProgress<double>, CancellationToken> Map(int size)
    {
        MapPoint[] points =
        [
            .. Enumerable
                .Range(0, 9 * size)
                .Select(i => new MapPoint(
                    $"A{i}",
                    -60 + i * 37 % 120,
                    -35 + i * 23 % 70,
                    [new GaugeValue(Gauge.Growth, "x", 0.02 + 0.001 * (i * 37 % 120), 0.004)]
                )),
        ];
        return (progress, stop) => LightMap.Run(points, null, progress, stop);
    }

    /// <summary>Sizes by many calipers, and a word, so that it is drawn too.</summary>
    internal static Action<IProgress<double>, CancellationToken> Prediction(int size)
    {
        FeatureTable features = TestObject.Of(Presets.Witness).Features;
        IEnumerable<string> lines = Enumerable
            .Range(0, 3 * size)
            .SelectMany(i =>
                (string[])
                    [
                        $"box1.outside.x,8.0{i % 5},mm,cal{i},",
                        $"box2.inside.x,8.1{i % 5},mm,cal{i},",
                        $"box2.outside.x,11.2{i % 5},mm,cal{i},",
                    ]
            );
        ReadingSet readings = ReadingsFile.Parse(
            "# state dry\n# material rigid\n"
                + string.Concat(
                    Enumerable.Range(0, 3 * size).Select(i => $"# instrument cal{i} resolution=0.01 mpe=0.02\n")
                )
                + "feature,value,unit,instrument,note\n"
                + string.Join("\n", lines)
                + "\njoint1.fit,slides,,,\n"
        );
        return (progress, stop) => ClearancePrediction.Of(features, readings, null, progress, stop);
    }

    internal static Trial[] Trials(int count) => [.. Enumerable.Range(0, count).Select(Trial)];

    private static Trial Trial(int i) =>
        new(new ExposureSettings(2 + 0.1 * (i % 8), 1), new TrialConditions(0.05, "Demo grey", "bench"))
        {
            GrowthX = new GrowthReading(0.01 + 0.004 * (i % 8) + 0.0003 * (i * 7 % 5), 0.004),
            Slots = new SlotOutcome([0.16, 0.2, 0.25, 0.315, 0.4], 4 - i % 8 / 2),
            Columns = [.. Enumerable.Range(0, 4).Select(k => new ColumnOutcome(0.25 + 0.05 * k, Stage(k, i)))],
        };

    private static ColumnStage Stage(int column, int print) =>
        column > 1 + print % 2 ? ColumnStage.Cure : ColumnStage.Lost;
}
