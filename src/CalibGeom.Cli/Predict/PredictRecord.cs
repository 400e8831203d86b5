using System.Globalization;
using CalibGeom.Cli.Shared;
using CalibGeom.Features.Files;
using CalibGeom.Pictures.Reports;
using CalibGeom.Verification.Clearances;

namespace CalibGeom.Cli.Predict;

/// <summary>The answer of <c>predict</c> as a page to file.</summary>
internal static class PredictRecord
{
    /// <exception cref="InputException">The name is no HTML file's.</exception>
    internal static void Write(
        OutputSet files,
        string path,
        IReadOnlyList<PredictAnswer> answers,
        FeatureTable features,
        IReadOnlyList<string> inputs,
        bool budget
    )
    {
        RecordFile.RequireName(path);
        var page = new ReportPage
        {
            Title = $"Clearances from {string.Join(", ", inputs.Select(RecordFile.NameOf))}",
            Answer = [.. answers.SelectMany(Sentences)],
            ToType = [.. answers.SelectMany(ToType)],
            Findings = [.. answers.SelectMany(a => a.Findings)],
            Plots =
            [
                .. answers.Where(a => a.Prediction.Joints.Count > 0).Select(a => ClearancePlot.Draw(a.Prediction)),
            ],
            Tables = [.. answers.Select(a => new ReportText(Heading("In full", a), Full(a, budget)))],
            Inputs = RecordFile.Contents(inputs),
            Digest = features.Digest,
            Version = Envelope.Version,
        };
        files.Add(path, page.Write);
        files.Commit();
    }

    private static IEnumerable<string> Sentences(PredictAnswer answer)
    {
        IEnumerable<string> all = PredictionText.Sentences(answer.Prediction);
        if (answer.Own is { } own)
            all = all.Append(PredictionText.Sentence(own));
        return answer.Coupon.Length > 0 ? all.Select(s => $"{answer.Coupon}: {s}") : all;
    }

    private static IEnumerable<KeyValuePair<string, string>> ToType(PredictAnswer answer) =>
        answer.Prediction.Compensation.SelectMany(c =>
            new KeyValuePair<string, string>[]
            {
                new(
                    Heading($"scale factor {c.Axis.ToUpperInvariant()}", answer),
                    c.ScaleFactor.Value.ToString("0.00000", CultureInfo.InvariantCulture)
                ),
                new(
                    Heading($"then edge offset {c.Axis.ToUpperInvariant()}", answer),
                    c.EdgeOffset.Value.ToString("+0.000;-0.000;0.000", CultureInfo.InvariantCulture) + " mm"
                ),
            }
        );

    private static string Heading(string text, PredictAnswer answer) =>
        answer.Coupon.Length > 0 ? $"{answer.Coupon}: {text}" : text;

    private static string Full(PredictAnswer answer, bool budget)
    {
        using var text = new StringWriter();
        PredictReport.Write(text, answer, budget);
        return text.ToString().TrimEnd();
    }
}
