using CalibGeom.Verification.Logs;

namespace CalibGeom.Verification.Tests;

/// <summary>Bridges whose beam is 2 mm thick by design.</summary>
internal static class Bridges
{
    internal const double Beam = 2;

    /// <summary>The standard object with a bridge.</summary>
    internal static FeatureTable Table { get; } =
        new(
            [
                .. StandardObject.Table,
                new Feature(KnownFeatures.BridgeThickness, Beam, "mm", "z", "outside jaws between the posts"),
            ],
            StandardObject.Digest
        );

    /// <summary>A trial with the beam's thickness as read, mm.</summary>
    internal static Trial Read(Trial trial, params double[] beam) =>
        trial with
        {
            Readings = new Dictionary<string, IReadOnlyList<double>> { [KnownFeatures.BridgeThickness] = beam },
            Nominals = new Dictionary<string, double> { [KnownFeatures.BridgeThickness] = Beam },
        };
}
