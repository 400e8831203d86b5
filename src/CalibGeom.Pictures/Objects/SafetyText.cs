namespace CalibGeom.Pictures.Objects;

/// <summary>What must be said on every sheet that leads to a print.</summary>
public static class SafetyText
{
    /// <summary>The cautions, one a sentence or two, in the order of work.</summary>
    public static IReadOnlyList<string> Sentences { get; } =
    [
        "Uncured resin sensitises skin and irritates eyes, and UV light hurts eyes: nitrile gloves, eye protection, "
            + "ventilation, the resin's safety data sheet.",
        "Wash solvents are flammable: no flame, no spark, no heater near them.",
        "Scrape away from the hand that holds the plate.",
        "Liquid resin stays in wells and between boxes put together: wash them apart, and do not cure boxes put "
            + "together before they are dry.",
        "Wear eye protection when boxes snap off; columns are sharp when they break.",
        "Wipe a caliper that others use before and after.",
        "Resin, solvent and the water that water-washable resin was rinsed with are waste: keep to local rules.",
        "A designed or predicted size is an estimate: parts whose failure can hurt someone need inspection and a "
            + "qualified person's judgement. Dental and medical use follows its own licensed process.",
    ];

    /// <summary>All of them in one text.</summary>
    public static string Full { get; } = "Caution. " + string.Join(" ", Sentences);
}
