using System.Globalization;

namespace CalibGeom.Verification.Clearances;

/// <summary>Joint j: box j goes into box j + 1. Either axis may be missing from the table.</summary>
internal sealed record JointDesign(int Number, IReadOnlyDictionary<string, (Face Peg, Face Pocket)> Axes)
{
    internal string FitId => string.Create(CultureInfo.InvariantCulture, $"joint{Number}.fit");

    internal static IReadOnlyList<JointDesign> All(IReadOnlyDictionary<string, Feature> features)
    {
        var joints = new List<JointDesign>();
        for (int j = 1; Exists(features, j); j++)
        {
            var axes = new Dictionary<string, (Face, Face)>(StringComparer.Ordinal);
            foreach (string axis in new[] { "x", "y" })
                if (
                    Find(features, $"box{Text(j)}.outside.{axis}") is { } peg
                    && Find(features, $"box{Text(j + 1)}.inside.{axis}") is { } pocket
                )
                    axes[axis] = (peg, pocket);
            if (axes.Count > 0)
                joints.Add(new JointDesign(j, axes));
        }
        return joints;
    }

    private static bool Exists(IReadOnlyDictionary<string, Feature> features, int box) =>
        features.ContainsKey($"box{Text(box)}.outside.x") || features.ContainsKey($"box{Text(box)}.outside.y");

    private static Face? Find(IReadOnlyDictionary<string, Feature> features, string id) =>
        features.TryGetValue(id, out Feature? f) ? Face.Of(f) : null;

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
