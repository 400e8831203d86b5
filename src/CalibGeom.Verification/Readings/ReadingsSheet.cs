using System.Globalization;
using System.Text;
using CalibGeom.Features.Files;

namespace CalibGeom.Verification.Readings;

/// <summary>
/// An empty sheet for the bench: what to measure in the order of work, so that from top to bottom nothing spoils what
/// comes later. Header lines stand ready and count only once they are filled in.
/// </summary>
public static class ReadingsSheet
{
    /// <summary>The sheet of an object.</summary>
    /// <param name="features">What to measure.</param>
    /// <param name="all">Everything; by default only what predictions and advice use.</param>
    public static string Of(FeatureTable features, bool all = false)
    {
        ArgumentNullException.ThrowIfNull(features);
        var text = new StringBuilder();
        if (features.Digest is { } digest)
            text.Append(CultureInfo.InvariantCulture, $"# digest {digest}\n");
        text.Append(
            "# Fill in what you know; an empty line or value is left out. Temperature of part and caliper in\n"
        );
        text.Append("# degrees C; the state is washed, dry or post-cured, the material rigid or flexible.\n");
        text.Append("# temperature\n# state\n# material\n# instrument cal resolution= mpe=\n");
        text.Append("feature,value,unit,instrument,note\n");
        foreach ((string id, bool size, string how) in Rows(features, all))
            text.AppendJoin(',', CsvText.Quote(id), "", size ? "mm" : "", size ? "cal" : "", CsvText.Quote(how))
                .Append('\n');
        return text.ToString();
    }

    /// <summary>Whether a text is anything but a sheet that nobody has filled in.</summary>
    /// <param name="text">The content of a file.</param>
    public static bool HoldsValues(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        try
        {
            ReadingSet set = ReadingsFile.Parse(text);
            return set.Readings.Count > 0
                || set.Temperature is not null
                || set.State is not null
                || set.Material is not null;
        }
        catch (InputException)
        {
            return text.Trim().Length > 0;
        }
    }

    private static IEnumerable<(string Id, bool Size, string How)> Rows(FeatureTable features, bool all)
    {
        var coupons = features.InOrderOfWork().GroupBy(f => f.Id.Coupon);
        foreach (IGrouping<string, Feature> coupon in coupons)
        {
            Feature[] stood = coupon.Where(f => f.Unit == "stage").ToArray();
            bool told = false;
            foreach (Feature f in coupon)
            {
                if (f.Unit == "stage")
                {
                    if (!told)
                        foreach (var row in Stages(features, stood))
                            yield return row;
                    told = true;
                }
                else if (all || IsUsed(f))
                    yield return (f.Id, f.Unit == "mm", f.How);
            }
        }
    }

    /// <summary>
    /// Columns whose place is known stand in one row of the sheet for each row of their block, from left to right.
    /// </summary>
    private static IEnumerable<(string Id, bool Size, string How)> Stages(FeatureTable features, Feature[] stood)
    {
        if (!Array.TrueForAll(stood, f => f.Spot is not null && f.Id.Number is not null))
            return stood.Select(f => ((string)f.Id, false, f.How));
        return stood.GroupBy(f => f.Spot!.Row).OrderBy(g => g.Key).Select(g => Row(features, g.Key, g));
    }

    private static (string Id, bool Size, string How) Row(FeatureTable features, int number, IEnumerable<Feature> row)
    {
        const string words =
            "one word for all, or one each: lost, plate, wash or cure, the last stage at which it stood";
        Feature[] inOrder = [.. row.OrderBy(f => f.Spot!.Place)];
        FeatureId first = inOrder[0].Id;
        string list = string.Join('+', inOrder.Select(f => f.Id.Number));
        string label = first.Coupon.Length > 0 ? first.Coupon + "/" : "";
        string sizes = string.Join(' ', inOrder.Select(f => Diameter(features, f)));
        return (
            $"{label}{first.Part}{list}.{first.Size}",
            false,
            $"row {number} from the front, left to right ({sizes} mm): {words}"
        );
    }

    private static string Diameter(FeatureTable features, Feature stood) =>
        features.Find(stood.Id.With(KnownFeatures.Diameter))?.Nominal.ToString(CultureInfo.InvariantCulture) ?? "?";

    private static bool IsUsed(Feature f) => f.Step != WorkStep.Last;
}
