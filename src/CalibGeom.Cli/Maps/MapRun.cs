using CalibGeom.Cli.Shared;
using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Maps;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Maps;
using CalibGeom.Verification.Trends;
using CalibGeom.Verification.Tuning;

namespace CalibGeom.Cli.Maps;

/// <summary>One run of <c>map</c>.</summary>
internal sealed class MapRun(CommandIo io)
{
    internal required IReadOnlyList<string> Inputs { get; init; }

    /// <summary>Finds the object that readings are of by the digest they name.</summary>
    internal required Func<string?, FoundObject> Find { get; init; }

    internal required double[] Plate { get; init; }

    internal required double Tolerance { get; init; }

    internal required double LightTolerance { get; init; }

    internal MapJoint? Joint { get; init; }

    internal string? Grid { get; init; }

    internal string? Plot { get; init; }

    internal string? Report { get; init; }

    internal bool Json { get; init; }

    internal int Run()
    {
        if (Plot is not null)
            Drawing.RequireName(Plot);
        if (Report is not null)
            RecordFile.RequireName(Report);
        (IReadOnlyList<MapPoint> points, LearntEffects effects, IReadOnlyList<Finding> odd) = Read();
        MapResult map = Judge(points, effects.In(Options()));
        JointOverPlate? joint = Joint is { } j ? JointOverPlate.Of(map, j.Peg, j.Hole, j.At?.X, j.At?.Y) : null;
        IReadOnlyList<Finding> findings = [.. MapWords.Check(map), EffectWords.Of(effects), .. odd];
        using (var outputs = io.NewOutputs())
        {
            if (Plot is not null)
                outputs.Add(Plot, s => MapPlot.Draw(map).Write(Plot, s));
            if (Grid is not null)
                outputs.Add(
                    Grid,
                    s =>
                    {
                        using var writer = new StreamWriter(s, leaveOpen: true) { NewLine = "\n" };
                        CoverageGrid.Write(map, writer);
                    }
                );
            if (Report is not null)
                outputs.Add(Report, MapRecord.Page(Inputs, map, findings, joint).Write);
            outputs.Commit();
        }
        if (Json)
            Envelope.Write(io.Out, "map", findings, MapReport.Json(map, joint));
        else
            MapReport.Write(io.Out, map, findings, joint);
        return ExitCode.Done;
    }

    private (IReadOnlyList<MapPoint> Points, LearntEffects Effects, IReadOnlyList<Finding> Odd) Read()
    {
        bool log = Inputs.Count == 1 && (Inputs[0] == "-" || WrongFile.KindOf(Inputs[0]) == InputKind.Log);
        if (!log)
            return (MapReadings.Points(io, Inputs, Find, out IReadOnlyList<Finding> said), LearntEffects.None, said);
        TrialLog read = LogInput.Read(io, Inputs[0]);
        IReadOnlyList<MapPoint> points = MapLog.Newest(read.Entries);
        return (points, LearntEffects.Of(TrendLog.Of(read.Entries)), read.Findings);
    }

    /// <exception cref="InputException">The coupons cannot be judged.</exception>
    private static MapResult Judge(IReadOnlyList<MapPoint> points, MapOptions options)
    {
        try
        {
            return LightMap.Run(points, options);
        }
        catch (InputException e) when (e.Id == InputIds.Plate)
        {
            throw new InputException(
                e.Id,
                $"{e.Message} Name the plate with --plate WIDTHxDEPTH; the places of \"calibgeom place\" count from its "
                    + "middle unless it was told --origin corner.",
                e
            );
        }
    }

    private MapOptions Options()
    {
        try
        {
            return new MapOptions
            {
                Width = Plate[0],
                Depth = Plate[1],
                Tolerance = Tolerance,
                LightTolerance = LightTolerance / 100,
            };
        }
        catch (ArgumentException e)
        {
            throw InputException.Because(InputIds.Option, e);
        }
    }
}
