using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Cli.Shared.Terminals;
using CalibGeom.Features.Files;
using CalibGeom.Objects.Families;

namespace CalibGeom.Cli.Make;

/// <summary>One run of <c>make --sweep</c>: a family of objects instead of one.</summary>
internal static class MakeSweep
{
    /// <exception cref="InputException">Options do not go together.</exception>
    internal static void RequireSense(MakeRequest request)
    {
        if (request.Sweeps.Count == 0)
        {
            if (request.Shard is not null)
                throw new InputException(
                    InputIds.Option,
                    "--shard parts a family. Say what varies: --sweep NAME=VALUES."
                );
            return;
        }
        if (request.Check || (request.Sheet ?? request.Picture) is not null || request.Mark != 0)
            throw new InputException(
                InputIds.Option,
                "--sweep goes with neither --check, --sheet, --picture nor --mark. Leave them away."
            );
        if (request.Output?.Contains(FamilyMaker.NumberMark, StringComparison.Ordinal) != true)
            throw new InputException(
                InputIds.Option,
                "--sweep makes many files. Name them with {n} for the number: -o out/{n}.stl."
            );
    }

    internal static int Run(CommandIo io, MakeRequest request)
    {
        var family = new ObjectFamily(
            request.Source.Name,
            request.Source.Spec,
            [.. request.Sweeps.Select(SweepAxis.Parse)]
        );
        FamilyShard shard = request.Shard is { } text ? FamilyShard.Parse(text) : FamilyShard.Whole;
        FamilyResult result = Make(io, request, family, shard);
        if (request.Json)
            Envelope.Write(io.Out, "make", [], Describe(family, result));
        else
            WriteText(io, family, shard, result);
        return result.Failing > 0 ? ExitCode.Finding : ExitCode.Done;
    }

    private static FamilyResult Make(CommandIo io, MakeRequest request, ObjectFamily family, FamilyShard shard)
    {
        using ProgressBar? bar = ProgressBar.For(io, "making");
        return FamilyMaker.Run(
            family,
            shard,
            request.Output!,
            (name, made, mesh, path) =>
            {
                using OutputSet files = io.NewOutputs();
                MakeFiles.Add(files, path, new SpecSource(name, made.Spec), made, mesh);
                files.Commit();
            },
            io.NewOutputs,
            bar
        );
    }

    private static void WriteText(CommandIo io, ObjectFamily family, FamilyShard shard, FamilyResult result)
    {
        string part = shard.Of == 1 ? "" : $", part {shard.Part} of {shard.Of}";
        io.Out.WriteLine(
            $"{family.Name}: {family.Count} objects{part}: {result.Made} made now, {result.Known} stood already, "
                + $"{result.Failing} cannot work"
        );
        foreach (string path in result.Files)
            io.Say($"wrote {path}");
        io.SayCaution();
    }

    private static JsonObject Describe(ObjectFamily family, FamilyResult result)
    {
        JsonObject node = FamilyIndex.ToNode(family, result.Rows);
        node["known"] = result.Known;
        node["failing"] = result.Failing;
        node["files"] = new JsonArray([.. result.Files.Select(f => (JsonNode)f)]);
        node["caution"] = Caution.Text;
        return node;
    }
}
