using CalibGeom.Meshes;
using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Comparison;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Objects;

/// <summary>
/// Holds a mesh against the object it should be; of a plate, each coupon with its label where it stands, turned back as
/// it was turned.
/// </summary>
public static class ObjectComparison
{
    // Coupons keep a gap of at least 0.1 mm to everything else.
    private const double Slack = 0.02;

    /// <summary>
    /// Findings for every size that differs or is missing; none when the mesh has the object's sizes.
    /// </summary>
    /// <param name="mesh">The mesh as it was written.</param>
    /// <param name="file">The object.</param>
    /// <exception cref="InputException">The object has design errors, so there is nothing to compare with.</exception>
    public static IReadOnlyList<Finding> Check(TriangleMesh mesh, ObjectFile file)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        ArgumentNullException.ThrowIfNull(file);
        return file.Coupons.Count == 0
            ? SpecComparison.Check(mesh, Made(file.Name, file.Spec))
            : file.Coupons.SelectMany(c => Check(mesh, file, c)).ToArray();
    }

    private static IEnumerable<Finding> Check(TriangleMesh mesh, ObjectFile file, ObjectCoupon coupon)
    {
        TestObject made = Made(file.Name, CouponSet.SpecOf(file.Spec, coupon.Label, coupon.Exposure));
        TriangleMesh own = Within(mesh.Transform(Back(coupon)), made.ToMesh().Bounds);
        return SpecComparison
            .Check(own, made)
            .Select(f => coupon.Label.Length > 0 ? f with { Subject = $"{coupon.Label}/{f.Subject}" } : f);
    }

    private static TestObject Made(string name, TestObjectSpec spec)
    {
        TestObject made = TestObject.Of(spec);
        return made.Solid is not null
            ? made
            : throw new InputException(
                InputIds.ObjectFile,
                $"{name}: this object has design errors, so there is nothing to compare with. Check its design."
            );
    }

    private static Affine3D Back(ObjectCoupon c) => Affine3D.Shift(new(-c.X, -c.Y, -c.Z)).Then(Affine3D.TurnZ(-c.Turn));

    /// <summary>The triangles that lie in a box.</summary>
    private static TriangleMesh Within(TriangleMesh mesh, Box3D box)
    {
        var coordinates = new List<double>();
        var triangles = new List<int>();
        var numbers = new Dictionary<int, int>();
        ReadOnlySpan<int> all = mesh.Triangles;
        for (int t = 0; t < all.Length; t += 3)
        {
            if (!IsIn(mesh.Vertex(all[t])) || !IsIn(mesh.Vertex(all[t + 1])) || !IsIn(mesh.Vertex(all[t + 2])))
                continue;
            for (int k = 0; k < 3; k++)
                triangles.Add(Number(all[t + k]));
        }
        return new TriangleMesh(coordinates.ToArray(), triangles.ToArray());

        bool IsIn(Vector3D p) =>
            p.X >= box.Min.X - Slack
            && p.X <= box.Max.X + Slack
            && p.Y >= box.Min.Y - Slack
            && p.Y <= box.Max.Y + Slack
            && p.Z >= box.Min.Z - Slack
            && p.Z <= box.Max.Z + Slack;

        int Number(int vertex)
        {
            if (numbers.TryGetValue(vertex, out int known))
                return known;
            Vector3D p = mesh.Vertex(vertex);
            coordinates.AddRange([p.X, p.Y, p.Z]);
            return numbers[vertex] = numbers.Count;
        }
    }
}
