using CalibGeom.Verification.Readings;

namespace CalibGeom.Testing;

/// <summary>Readings as a person hands them in.</summary>
internal static class Sheet
{
    /// <summary>The readings of one print; the ordinary caliper needs no line of its own.</summary>
    internal static ReadingSet Of(
        IEnumerable<Reading> readings,
        SimulatedCaliper reader,
        FeatureTable features,
        PartState state,
        Material? material
    ) =>
        new(
            readings,
            reader.Instrument == Instrument.Caliper ? [] : [reader.Instrument],
            features.Digest,
            state: state,
            material: material
        );
}
