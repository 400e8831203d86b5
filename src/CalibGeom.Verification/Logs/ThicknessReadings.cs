namespace CalibGeom.Verification.Logs;

/// <summary>Thicknesses as a trial keeps them. A log may have been written by hand.</summary>
internal static class ThicknessReadings
{
    /// <summary>What was read of a thickness, repeats in order; empty where it was not read.</summary>
    /// <param name="trial">The print.</param>
    /// <param name="id">The feature.</param>
    /// <param name="name">What the print is called in an answer.</param>
    /// <exception cref="InputException">A reading is no thickness.</exception>
    internal static double[] Of(Trial trial, FeatureId id, string name)
    {
        double[] read = trial.Readings.TryGetValue(id, out IReadOnlyList<double>? all) ? [.. all] : [];
        foreach (double odd in read.Where(mm => !IsThickness(mm)))
            throw new InputException(
                InputIds.Log,
                FormattableString.Invariant(
                    $"{name}: a reading of {id} is {odd} mm; it must be above 0 and at most 1000 mm. Correct it in the log."
                )
            );
        return read;
    }

    internal static bool IsThickness(double mm) => mm > 0 && mm <= 1000;
}
