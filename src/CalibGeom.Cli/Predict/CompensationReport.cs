using System.Globalization;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Clearances;
using static CalibGeom.Cli.Predict.NumberText;

namespace CalibGeom.Cli.Predict;

/// <summary>Scale factor and edge offset, and the sizes they would give.</summary>
internal static class CompensationReport
{
    internal static void Write(TextWriter writer, ClearancePrediction p)
    {
        writer.WriteLine();
        foreach (CompensationAxis c in p.Compensation)
        {
            string axis = c.Axis.ToUpperInvariant(),
                pixels = c.EdgeOffsetPixels is { } n
                    ? string.Create(CultureInfo.InvariantCulture, $" ({n:+0.00;-0.00;0.00} pixels)")
                    : "",
                scale = c.ScaleDistinct
                    ? string.Create(
                        CultureInfo.InvariantCulture,
                        $"scale factor {c.ScaleFactor.Value:0.00000} +- {c.ScaleFactor.Expanded:0.00000}"
                    )
                    : "no scale factor (not distinct from 1)",
                offset = c.OffsetDistinct
                    ? $"edge offset {Signed(c.EdgeOffset.Value)} mm{pixels} +- {Mm(c.EdgeOffset.Expanded)}"
                    : $"no edge offset (not distinct from 0; +- {Mm(c.EdgeOffset.Expanded)} mm)";
            writer.WriteLine($"to compensate {axis}: {scale}, then {offset}");
        }
        writer.WriteLine("This is instead of an edge offset that tune advises: never add the two.");
        bool whole = p.Options.PixelPitch is not null;
        List<string[]> rows =
        [
            ["size, mm", "nominal", "now", "compensated", .. whole ? ["in whole pixels"] : Array.Empty<string>()],
        ];
        foreach (CompensatedSize s in p.CompensatedSizes())
            rows.Add([
                s.Feature,
                Mm(s.Nominal),
                Mm(s.Now),
                Mm(s.Compensated),
                .. s.WholePixels is { } w ? [Mm(w)] : Array.Empty<string>(),
            ]);
        TextTable.Write(writer, rows);
    }
}
