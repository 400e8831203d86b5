using System.Text.Json.Nodes;
using CalibGeom.Cli.Shared;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Cli.Predict;

/// <summary>The answer of <c>predict</c> as JSON.</summary>
internal static class PredictResult
{
    internal static void Write(TextWriter writer, IReadOnlyList<PredictAnswer> answers, bool budget)
    {
        Finding[] findings = answers
            .SelectMany(a =>
                a.Findings.Select(f =>
                    a.Coupon.Length > 0 && f.Subject.Length > 0 && !f.Subject.Contains('/')
                        ? f with
                        {
                            Subject = $"{a.Coupon}/{f.Subject}",
                        }
                        : f
                )
            )
            .ToArray();
        Envelope.Write(
            writer,
            "predict",
            findings,
            new JsonObject { ["coupons"] = List(answers, a => Describe(a, budget)), ["caution"] = Caution.Text }
        );
    }

    private static JsonObject Describe(PredictAnswer answer, bool budget)
    {
        ClearancePrediction p = answer.Prediction;
        return new JsonObject
        {
            ["coupon"] = answer.Coupon,
            ["sentences"] = List(
                [
                    .. PredictionText.Sentences(p),
                    .. answer.Own is { } o ? [PredictionText.Sentence(o)] : Array.Empty<string>(),
                ],
                s => s
            ),
            ["joints"] = List(p.Joints, j => Joint(j, budget)),
            ["axes"] = List(p.Axes, Axis),
            ["scaleDifference"] = Difference(p.ScaleDifference),
            ["growthDifference"] = Difference(p.GrowthDifference),
            ["printThrough"] = Between(p.PrintThrough),
            ["squeeze"] = Between(p.Squeeze),
            ["lowestLayers"] = p.LowestLayers is { } l
                ? new JsonObject
                {
                    ["lost"] = Value(l.Lost),
                    ["distinct"] = l.Distinct,
                    ["tabDisagrees"] = l.TabDisagrees,
                }
                : null,
            ["heightScale"] = Value(p.HeightScale),
            ["fit"] = PredictChecks.Fit(p.Check),
            ["burr"] = PredictChecks.Burr(p.Burr, Value),
            ["grossErrors"] = List(p.GrossErrors, PredictChecks.Gross),
            ["betweenPrints"] = PredictChecks.Variation(p.Variation),
            ["ownJoint"] = answer.Own is { } own ? Own(own, answer.Iso) : null,
            ["compensation"] = List(
                p.Compensation,
                c => new JsonObject
                {
                    ["axis"] = c.Axis,
                    ["scaleFactor"] = Value(c.ScaleFactor),
                    ["scaleDistinct"] = c.ScaleDistinct,
                    ["edgeOffset"] = Value(c.EdgeOffset),
                    ["offsetDistinct"] = c.OffsetDistinct,
                    ["edgeOffsetPixels"] = c.EdgeOffsetPixels,
                }
            ),
            ["sizes"] = List(
                p.CompensatedSizes(),
                s => new JsonObject
                {
                    ["feature"] = s.Feature.ToString(),
                    ["nominal"] = s.Nominal,
                    ["now"] = s.Now,
                    ["compensated"] = s.Compensated,
                    ["wholePixels"] = s.WholePixels,
                }
            ),
            ["measured"] = List(
                p.Grades,
                g => new JsonObject
                {
                    ["feature"] = g.Feature.ToString(),
                    ["nominal"] = g.Nominal,
                    ["mean"] = g.Measured,
                    ["deviation"] = g.Deviation,
                    ["u95"] = g.Expanded,
                    ["grade"] = g.Grade?.Grade,
                    ["orBetter"] = g.Grade?.OrBetter,
                }
            ),
            ["overallGrade"] = p.OverallGrade,
            ["residuals"] = List(
                p.Residuals,
                r => new JsonObject
                {
                    ["feature"] = r.Feature.ToString(),
                    ["instrument"] = r.Instrument,
                    ["mean"] = r.Mean,
                    ["count"] = r.Count,
                    ["residual"] = r.Residual,
                    ["standardised"] = r.Standardised,
                    ["print"] = r.Print,
                    ["leftOut"] = r.IsAside,
                }
            ),
            ["improvements"] = List(
                p.Improvements(),
                i => new JsonObject
                {
                    ["action"] = i.Action,
                    ["ratio"] = i.Ratio,
                    ["halves"] = i.Halves,
                }
            ),
        };
    }

    private static JsonObject Joint(JointPrediction j, bool budget) =>
        new()
        {
            ["joint"] = j.Fit.Item,
            ["expected"] = PredictionText.Word(j.Expected),
            ["enters"] = j.ProbabilityEnters,
            ["fits"] = Fits(j.Fits),
            ["felt"] = List(j.Felt, f => PredictionText.Word(f)),
            ["withheld"] = j.Withheld,
            ["axes"] = List(j.Axes, c => Clearance(c, budget)),
        };

    private static JsonObject Clearance(AxisClearance c, bool budget)
    {
        var node = new JsonObject
        {
            ["axis"] = c.Axis,
            ["design"] = c.Design,
            ["clearance"] = Value(c.Clearance),
            ["mean"] = Value(c.Mean),
            ["next"] = Value(c.Next),
            ["decision"] = PredictChecks.Decision(c.Decision),
            ["capability"] = PredictChecks.Capability(c.Capability),
            ["direct"] = Value(c.Direct),
            ["model"] = Value(c.Model),
            ["agreement"] = c.Agreement,
            ["deviation"] = c.Deviation,
        };
        if (budget)
            node["budget"] = List(
                c.Budget.Components,
                b => new JsonObject
                {
                    ["component"] = b.Name,
                    ["u"] = b.StandardUncertainty,
                    ["type"] = b.Evaluation.ToString(),
                    ["distribution"] = Verification.Uncertainty.UncertaintyBudget.Word(b.Shape),
                    ["sensitivity"] = b.Sensitivity,
                    ["share"] = b.Share,
                }
            );
        return node;
    }

    private static JsonObject Axis(AxisEstimate a) =>
        new()
        {
            ["axis"] = a.Axis,
            ["scale"] = Value(a.Scale),
            ["growth"] = Value(a.Growth),
            ["nextGrowth"] = Value(a.NextGrowth),
            ["covariance"] = a.Covariance,
            ["scaleAssumed"] = a.ScaleAssumed,
            ["scaleChance"] = a.ScaleProbability,
            ["growthChance"] = a.GrowthProbability,
        };

    private static JsonObject Own(OwnJoint own, IsoJoint? iso) =>
        new()
        {
            ["peg"] = own.PegNominal,
            ["hole"] = own.HoleNominal,
            ["fit"] = iso?.Fit.Name,
            ["withheld"] = own.Withheld,
            ["expected"] = PredictionText.Word(own.Expected),
            ["enters"] = own.ProbabilityEnters,
            ["fits"] = Fits(own.Fits),
            ["axes"] = List(
                own.Axes,
                a => new JsonObject
                {
                    ["axis"] = a.Axis,
                    ["clearance"] = Value(a.Clearance),
                    ["peg"] = Value(a.Peg),
                    ["hole"] = Value(a.Hole),
                    ["pegGrade"] = a.PegGrade.ToString(),
                    ["holeGrade"] = a.HoleGrade.ToString(),
                    ["holeForWanted"] = Value(a.HoleForWanted),
                    ["pegForWanted"] = Value(a.PegForWanted),
                    ["decision"] = PredictChecks.Decision(a.Decision),
                }
            ),
            ["isoFits"] = List(own.IsoFits, f => new JsonObject { ["fit"] = f.Fit, ["probability"] = f.Probability }),
            ["wanted"] = own.Wanted,
            ["holeForWanted"] = Value(own.HoleForWanted),
            ["pegForWanted"] = Value(own.PegForWanted),
        };

    private static JsonObject Fits(IReadOnlyDictionary<FeltFit, double> fits) =>
        new(fits.Select(f => KeyValuePair.Create<string, JsonNode?>(PredictionText.Word(f.Key), f.Value)));

    private static JsonObject? Difference(AxisDifference? d) =>
        d is null ? null : new JsonObject { ["difference"] = Value(d.Difference), ["chance"] = d.Probability };

    private static JsonObject? Between(Bracket? b) =>
        b is null ? null : new JsonObject { ["low"] = b.Low, ["high"] = double.IsFinite(b.High) ? b.High : null };

    private static JsonObject? Value(Estimate? e) =>
        e is null
            ? null
            : new JsonObject
            {
                ["value"] = e.Value,
                ["u"] = e.StandardUncertainty,
                ["degreesOfFreedom"] = double.IsFinite(e.DegreesOfFreedom) ? e.DegreesOfFreedom : null,
                ["low"] = e.Interval.Low,
                ["high"] = e.Interval.High,
            };

    private static JsonArray List<T>(IEnumerable<T> items, Func<T, JsonNode?> describe) =>
        new(items.Select(describe).ToArray());
}
