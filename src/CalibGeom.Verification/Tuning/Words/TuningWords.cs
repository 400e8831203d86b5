namespace CalibGeom.Verification.Tuning.Words;

/// <summary>
/// The answer in sentences: one order with one reason, one verdict, then what else the trials show. Only the order
/// orders.
/// </summary>
internal static class TuningWords
{
    internal static IReadOnlyList<Finding> Of(TuningResult result) =>
        [
            OrderWords.Of(result),
            VerdictWords.Of(result),
            .. DesignWords.Of(result),
            .. ColumnWords.Of(result),
            .. LightWords.Of(result),
            .. RestWords.Of(result),
            .. ScaleWords.Of(result),
            .. CaliperWords.Of(result),
            .. MachineWords.Of(result),
            .. ConditionWords.Of(result),
        ];

    internal static Finding Note(string rule, string message, string remedy = "", string subject = "") =>
        new(rule, Severity.Note, subject, message, remedy);

    internal static string Text(FormattableString text) => FormattableString.Invariant(text);
}
