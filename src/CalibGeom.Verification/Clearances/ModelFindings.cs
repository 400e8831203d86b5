using System.Globalization;

namespace CalibGeom.Verification.Clearances;

/// <summary>Whether the model holds, and what the readings cannot know.</summary>
internal static class ModelFindings
{
    internal static IEnumerable<Finding> Of(ClearancePrediction p, IReadOnlyList<MatchedReadings> prints)
    {
        if (!p.Check.Holds)
            yield return Misfit(p.Check);
        if (p.Burr is { Seen: true } seen)
            yield return Seen(seen);
        else if (p.Burr is { CanTell: false })
            yield return CannotTell(p);
        if (prints.Any(m => m.Set.Material is null))
            yield return MaterialUnsaid(p.Options.FlexibleError);
    }

    private static Finding Misfit(ModelCheck c) =>
        new(
            "model-does-not-fit",
            Severity.Warning,
            "",
            Say(
                $"The readings do not fit scale and growth with the errors assumed: chi-square {c.ChiSquare:0.0} for {c.DegreesOfFreedom} degrees of freedom, by chance {Chance(c.Probability)} (Birge ratio {c.BirgeRatio:0.0}). Form was raised to {c.FormError:0.000} mm, and all intervals are wider for it."
            ),
            "Look for warped or bent walls, burrs and tilted readings; read two or three rounds, and print again if walls are bent."
        )
        {
            Value = c.BirgeRatio,
            Limit = 1,
        };

    private static string Chance(double probability) =>
        probability < 0.0005 ? "less than 0.001" : probability.ToString("0.000", CultureInfo.InvariantCulture);

    private static Finding Seen(BurrCheck burr) =>
        new(
            "burr-seen",
            Severity.Warning,
            "",
            Say(
                $"The outsides of the boxes stand {burr.Height.Value:0.000} mm (give or take {burr.Height.Expanded:0.000}) above what spans and insides predict: burrs or raised corners. That much was taken off."
            ),
            "Take burrs off with a blade held flat and read the middle of the faces again; write \"middle\" in the note."
        )
        {
            Value = burr.Height.Value,
            Unit = "mm",
        };

    private static Finding CannotTell(ClearancePrediction p)
    {
        bool spans = p.Residuals.Any(r => r.Feature.Part == KnownFeatures.Span);
        string middle = "one outside width in the middle of its face, away from corners, with \"middle\" in the note";
        return new Finding(
            "burr-or-growth",
            Severity.Warning,
            "",
            Say(
                $"A burr alike on all boxes {(spans ? "is hardly" : "cannot be")} told from growth with these readings (to {100 * p.Burr!.Told:0} %): one of 0.02 mm would look like up to 0.01 mm of growth. A standard deviation of {p.Options.BurrError:0.000} mm is carried for it."
            ),
            spans ? $"Read gauges and further rounds, or {middle}." : $"Read span.x and span.y, or {middle}."
        );
    }

    private static Finding MaterialUnsaid(double error) =>
        new(
            "material-unsaid",
            Severity.Warning,
            "",
            Say(
                $"Nobody says whether the material gives under the jaws, and no reading with jaws shows it: {error:0.00} mm a jaw is carried, as if it might."
            ),
            "Press a fingernail into an edge and bend a wall lightly; then write \"# material rigid\", which makes the intervals narrower, or \"# material flexible\"."
        );

    private static string Say(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
