using CalibGeom.Meshes;

namespace CalibGeom.Formats.ThreeMf;

/// <summary>
/// Reads the core of 3MF: each build item becomes one named mesh in mm, with its components and transforms applied.
/// Lenient reading of a model without a usable build takes each object that is no component of another once.
/// </summary>
internal static class ThreeMfReader
{
    internal static MeshFile Read(Stream stream, Faults faults)
    {
        var package = new ThreeMfPackage(stream, faults);
        using PartXml xml = package.OpenModel();
        var model = new ModelXml(xml, faults);
        try
        {
            xml.Guard(model.Read);
        }
        catch (InputException e) when (faults.Lenient && model.Objects.Count > 0)
        {
            faults.Drop(e.Message, "models that break off");
        }
        return new(
            MeshFormat.ThreeMf,
            [.. Items(model, faults).Select(i => Place(i.Object, i.Transform, model.Unit, faults))],
            faults,
            model.Metadata
        );
    }

    private static IEnumerable<(ModelObject Object, Affine3D Transform)> Items(ModelXml model, Faults faults)
    {
        if (model.Items.Count > 0 || !faults.Lenient)
            return model.Items;
        var inner = model.Objects.SelectMany(o => o.Components).Select(c => c.Child.Id).ToHashSet();
        return model.Objects.Where(o => !inner.Contains(o.Id)).Select(o => (o, Affine3D.Identity));
    }

    private static MeshObject Place(
        ModelObject item,
        Affine3D transform,
        (double Factor, double Divisor) unit,
        Faults faults
    )
    {
        var meshes = new List<TriangleMesh>();
        try
        {
            Gather(item, transform, meshes);
            return new(item.Name, Millimetres(TriangleMesh.Join(meshes), unit));
        }
        catch (ArgumentException e)
        {
            throw faults.Fatal($"object {item.Id} has coordinates that are not finite after its transform", cause: e);
        }
    }

    private static void Gather(ModelObject item, Affine3D transform, List<TriangleMesh> meshes)
    {
        if (item.Mesh.VertexCount > 0)
            meshes.Add(transform == Affine3D.Identity ? item.Mesh : item.Mesh.Transform(transform));
        foreach ((ModelObject child, Affine3D inner) in item.Components)
            Gather(child, inner.Then(transform), meshes);
    }

    private static TriangleMesh Millimetres(TriangleMesh mesh, (double Factor, double Divisor) unit)
    {
        if (unit == (1, 1))
            return mesh;
        double[] scaled = mesh.Coordinates.ToArray();
        for (int i = 0; i < scaled.Length; i++)
            scaled[i] = scaled[i] * unit.Factor / unit.Divisor;
        return new(scaled, mesh.Triangles);
    }
}
