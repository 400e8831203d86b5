namespace CalibGeom.Verification.Clearances;

/// <summary>How what was felt stands to the sizes.</summary>
/// <param name="Probabilities">The probability of each word by the sizes alone, in the order of the words.</param>
/// <param name="Contradicts">Whether words and sizes exclude each other: then the words do not count.</param>
internal sealed record FeltReport(IReadOnlyList<double> Probabilities, bool Contradicts)
{
    internal static FeltReport None { get; } = new([], false);
}
