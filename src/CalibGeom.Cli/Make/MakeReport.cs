using System.Globalization;
using CalibGeom.Cli.Shared;
using CalibGeom.Meshes;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Cli.Make;

/// <summary>The short table that <c>make</c> prints.</summary>
internal static class MakeReport
{
    internal static void Write(TextWriter writer, SpecSource source, TestObject made, TriangleMesh? mesh)
    {
        writer.WriteLine($"{source.Name}  digest {SpecDigest.Of(made.Spec)}");
        Boxes(writer, made);
        Columns(writer, made);
        if (mesh is null)
            return;
        Vector3D size = mesh.Bounds.Size;
        writer.WriteLine(
            string.Create(
                CultureInfo.InvariantCulture,
                $"triangles {mesh.TriangleCount}  volume {mesh.Volume / 1000:0.000} mL  bounding box "
                    + $"{size.X:0.00} x {size.Y:0.00} x {size.Z:0.00} mm"
            )
        );
        if (PrintEstimate.Of(made.Spec.Process, size.Z) is { } print)
            writer.WriteLine(print.Text);
    }

    private static void Boxes(TextWriter writer, TestObject made)
    {
        if (made.Boxes.Count == 0)
            return;
        List<string[]> rows =
        [
            ["box, mm", "wanted", "outside", "inside", "clearance to the next, per side"],
        ];
        foreach (BoxPlan box in made.Boxes)
        {
            JointPlan? joint = made.Joints.FirstOrDefault(j => j.Number == box.Number);
            rows.Add([
                $"box{box.Number}",
                Length(box.WantedOutside),
                Pair(box.Outside),
                box.HasPocket ? Pair(box.Inside) : "solid",
                joint is null ? "" : Pair(joint.Clearance),
            ]);
        }
        TextTable.Write(writer, rows);
    }

    private static void Columns(TextWriter writer, TestObject made)
    {
        if (made.Columns.Count == 0)
            return;
        List<string[]> rows =
        [
            ["columns", "diameter, mm", "load ratio"],
        ];
        foreach (IGrouping<string, ColumnPlan> same in made.Columns.GroupBy(c => Length(c.Diameter)))
            rows.Add([
                string.Join(" ", same.Select(c => c.Number.ToString(CultureInfo.InvariantCulture))),
                same.Key,
                same.First().LoadRatio.ToString("0.0", CultureInfo.InvariantCulture),
            ]);
        TextTable.Write(writer, rows);
    }

    private static string Pair(PerAxis value) =>
        value.IsUniform ? Length(value.X) : $"{Length(value.X)} / {Length(value.Y)}";

    private static string Length(double value) => value.ToString("0.000", CultureInfo.InvariantCulture);
}
