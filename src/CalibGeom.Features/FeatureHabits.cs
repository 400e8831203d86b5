namespace CalibGeom.Features;

/// <summary>What follows from an id where nothing else is said, so that a table read from CSV is as good.</summary>
internal static class FeatureHabits
{
    internal static FaceKind FacesOf(FeatureId id) =>
        id switch
        {
            { Size: KnownFeatures.Outside } or { Part: KnownFeatures.Span, Size: "" } => FaceKind.Outside,
            { Size: KnownFeatures.Inside } => FaceKind.Inside,
            _ => FaceKind.None,
        };

    internal static WorkStep StepOf(FeatureId id, string unit, string axis, FaceKind faces) =>
        (unit, faces) switch
        {
            ("count" or "stage", _) => WorkStep.Count,
            ("fit", _) => WorkStep.Feel,
            (_, FaceKind.Outside) => WorkStep.Outside,
            (_, FaceKind.Inside) => WorkStep.Inside,
            _ => axis == "z" && !IsSlot(id) ? WorkStep.Whole : WorkStep.Last,
        };

    /// <summary>The features with mates and openings where their ids tell them and nothing else is said.</summary>
    internal static IEnumerable<Feature> Complete(IReadOnlyList<Feature> features)
    {
        var byId = new Dictionary<FeatureId, Feature>();
        foreach (Feature feature in features)
            byId.TryAdd(feature.Id, feature);
        return features.Select(f =>
            f switch
            {
                { Unit: "fit", Mates.Count: 0 } => f with { Mates = MatesOf(f.Id, byId).ToValueList() },
                { Unit: "count", Openings.Count: 0 } => f with { Openings = OpeningsOf(f, byId).ToValueList() },
                _ => f,
            }
        );
    }

    /// <summary>Joint j: box j goes into box j + 1.</summary>
    private static IEnumerable<Mate> MatesOf(FeatureId id, Dictionary<FeatureId, Feature> byId)
    {
        if (id is not { Part: KnownFeatures.Joint, Number: { } joint })
            yield break;
        foreach (string axis in new[] { "x", "y" })
            if (
                byId.TryGetValue(KnownFeatures.BoxOutside(joint, axis).On(id.Coupon), out Feature? inner)
                && byId.TryGetValue(KnownFeatures.BoxInside(joint + 1, axis).On(id.Coupon), out Feature? outer)
            )
                yield return Mate.Of(inner, outer);
    }

    private static IEnumerable<double> OpeningsOf(Feature count, Dictionary<FeatureId, Feature> byId)
    {
        int many = (int)Math.Clamp(count.Nominal, 0, 1000);
        IEnumerable<FeatureId> ids =
            count.Id.OfObject == KnownFeatures.SlotsOpen ? Enumerable.Range(1, many).Select(KnownFeatures.SlotHeight)
            : count.Id.OfObject == KnownFeatures.SqueezeOpen
                ? Enumerable.Range(1, many).Select(KnownFeatures.SqueezeHeight)
            : [];
        double[] heights =
        [
            .. ids.Select(id => byId.GetValueOrDefault(id.On(count.Id.Coupon)))
                .TakeWhile(f => f is not null)
                .Select(f => f!.Nominal),
        ];
        return heights.Length == many ? heights : [];
    }

    private static bool IsSlot(FeatureId id) => id is { Part: KnownFeatures.Slot or KnownFeatures.Squeeze };
}
