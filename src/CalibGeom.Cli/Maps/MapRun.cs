using CalibGeom.Cli.Shared;
using CalibGeom.Features.Files;
using CalibGeom.Pictures.Drawings;
using CalibGeom.Pictures.Maps;
using CalibGeom.Verification.Logs;
using CalibGeom.Verification.Maps;

namespace CalibGeom.Cli.Maps;

/// <summary>One run of <c>map</c>.</summary>
internal sealed class MapRun(CommandIo io)
{
    internal required string Log { get; init; }

    internal required double[] Plate { get; init; }

    internal required double Tolerance { get; init; }

    internal required double LightTolerance { get; init; }

    internal MapJoint? Joint { get; init; }

    internal string? Grid { get; init; }

    internal string? Plot { get; init; }

    internal bool Json { get; init; }

    internal int Run()
    {
        if (Plot is not null)
            Drawing.RequireName(Plot);
        TrialLog log = LogInput.Read(io, Log);
        MapResult map = LightMap.Of(MapLog.Newest(log.Entries), Options());
        JointOverPlate? joint = Joint is { } j ? JointOverPlate.Of(map, j.Peg, j.Hole, j.At?.X, j.At?.Y) : null;
        using (var outputs = new OutputSet())
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
            outputs.Commit();
        }
        IReadOnlyList<Finding> findings = [.. MapWords.Of(map), .. log.Findings];
        if (Json)
            Envelope.Write(io.Out, "map", findings, MapReport.Json(map, joint));
        else
            MapReport.Write(io.Out, map, findings, joint);
        return ExitCode.Done;
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
            throw InputException.Because(e);
        }
    }
}
