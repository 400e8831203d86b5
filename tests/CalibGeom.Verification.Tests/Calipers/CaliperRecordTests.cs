using CalibGeom.Verification.Calipers;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;
using CalibGeom.Verification.Tests.Uncertainty;

namespace CalibGeom.Verification.Tests.Calipers;

public class CaliperRecordTests
{
    private const string Text = """
        # caliper cal
        # valid 200
        date,jaw,gauge,reading,part,person
        2026-06-01,outside,5,5.015,,
        2026-06-01,outside,10,10.02,,
        2026-11-02,outside,20,20.025,,
        2026-11-02,inside,8,7.985,,
        """;

    /// <summary>
    /// The study of ten parts, three appraisers and three trials in the manual of AIAG (4th edition): data and table of
    /// variance from memory; the sums of squares that follow from the data agree with the remembered table to its last
    /// digit, so that each confirms the other.
    /// </summary>
    private static readonly double[][] Aiag =
    [
        [0.29, -0.56, 1.34, 0.47, -0.80, 0.02, 0.59, -0.31, 2.26, -1.36],
        [0.41, -0.68, 1.17, 0.50, -0.92, -0.11, 0.75, -0.20, 1.99, -1.25],
        [0.64, -0.58, 1.27, 0.64, -0.84, -0.21, 0.66, -0.17, 2.01, -1.31],
        [0.08, -0.47, 1.19, 0.01, -0.56, -0.20, 0.47, -0.63, 1.80, -1.68],
        [0.25, -1.22, 0.94, 1.03, -1.20, 0.22, 0.55, 0.08, 2.12, -1.62],
        [0.07, -0.68, 1.34, 0.20, -1.28, 0.06, 0.83, -0.34, 2.19, -1.50],
        [0.04, -1.38, 0.88, 0.14, -1.46, -0.29, 0.02, -0.46, 1.77, -1.49],
        [-0.11, -1.13, 1.09, 0.20, -1.07, -0.67, 0.01, -0.56, 1.45, -1.77],
        [-0.15, -0.96, 0.67, 0.11, -1.45, -0.49, 0.21, -0.49, 1.87, -2.16],
    ];

    [Fact]
    public void ThePublishedStudyComesOut()
    {
        RepeatabilityStudy study = RepeatabilityStudy.Of(
            Enumerable
                .Range(0, 10)
                .Select(part =>
                    Enumerable
                        .Range(0, 3)
                        .Select(person => Enumerable.Range(0, 3).Select(k => Aiag[3 * person + k][part]).ToArray())
                        .ToArray()
                )
                .ToArray()
        );
        Near.Absolute(88.3619, study.Squares.BetweenParts, 6e-5);
        Near.Absolute(3.1673, study.Squares.BetweenPersons, 6e-5);
        Near.Absolute(0.3590, study.Squares.Interaction, 6e-5);
        Near.Absolute(2.7589, study.Squares.Within, 6e-5);
        // Interaction pooled; the manual's estimates: EV 0.199933, AV 0.226838, GRR 0.302373, PV 1.042327.
        Assert.True(study.InteractionPooled);
        Assert.Equal(78, study.DegreesOfFreedom);
        Near.Absolute(0.199933, study.Repeatability, 1e-6);
        Near.Absolute(0.226838, study.Reproducibility, 1e-6);
        Near.Absolute(0.302373, study.Together, 2e-6);
        Near.Absolute(1.042327, study.PartVariation, 1e-6);
    }

    [Fact]
    public void GaugesTellConstantAndSwing()
    {
        CaliperRecord record = CaliperRecordFile.Parse(Text);
        Assert.Equal("cal", record.Name);
        JawCheck outside = record.Jaws.Single(j => j.Jaw == Jaw.Outside);
        Near.Absolute(0.02, outside.Constant.Value, 1e-9);
        Near.Absolute(0.005, outside.Swing!.Value, 1e-9);
        Near.Absolute(0.005 / Math.Sqrt(3), outside.Constant.StandardUncertainty, 1e-9);
        Assert.Equal((3, 2), (outside.Lengths, outside.Days));
        Near.Absolute(0.0075, outside.Drift!.Value, 1e-9);
        Assert.Null(record.Jaws.Single(j => j.Jaw == Jaw.Inside).Swing);
        Assert.Null(record.Study);
    }

    [Fact]
    public void AnOldRecordIsSaid()
    {
        CaliperRecord record = CaliperRecordFile.Parse(Text);
        Assert.Null(CaliperRecords.Age("cal.csv", record, new DateOnly(2027, 5, 21)));
        Finding old = CaliperRecords.Age("cal.csv", record, new DateOnly(2027, 5, 22))!;
        Assert.Contains("2026-11-02, over 200 days ago", old.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ReadingsThatNameARecordUseItsGauges()
    {
        ReadingSet plain = ReadingsFile.Parse(
            "# state dry\n# instrument cal mpe=0.02 record=cal.csv\nfeature,value,unit,instrument,note\n"
                + "box1.outside.x,8.03,mm,cal,\nbox2.inside.x,8.07,mm,cal,\n"
        );
        ReadingSet known = CaliperRecords.Attach(plain, _ => CaliperRecordFile.Parse(Text));
        Assert.Equal(plain.Readings.Count + 4, known.Readings.Count);
        AxisClearance before = ClearancePrediction.Of(StandardObject.Table, plain).Joints[0].Axes[0],
            after = ClearancePrediction.Of(StandardObject.Table, known).Joints[0].Axes[0];
        // Outside reads 0.02 too much, inside 0.015 too little: the gap is 0.0175 per side wider than the display says.
        Assert.InRange(after.Direct!.Value - before.Direct!.Value, -1e-9, 1e-9);
        string both = $"{before.Clearance} {after.Clearance}";
        Assert.True(after.Clearance.Value > before.Clearance.Value + 0.005, both);
        Assert.True(after.Clearance.Expanded < before.Clearance.Expanded, both);
    }

    [Theory]
    [InlineData("date,jaw,gauge,reading,part,person\n2026-13-01,outside,5,5,,\n", ":2: the date")]
    [InlineData("date,jaw,gauge,reading,part,person\n2026-12-01,teeth,5,5,,\n", "the jaw")]
    [InlineData("date,jaw,gauge,reading,part,person\n2026-12-01,outside,5,-5,,\n", "the reading")]
    [InlineData("date,jaw,gauge,reading,part,person\n2026-12-01,outside,,5,,\n", "neither a gauge nor a part")]
    [InlineData("date,jaw\n", "header")]
    [InlineData("", "no readings")]
    [InlineData("# valid 0\n", "1 to 10000")]
    public void BadRecordsAreRefused(string text, string message) =>
        Assert.Contains(
            message,
            Assert.Throws<InputException>(() => CaliperRecordFile.Parse(text)).Message,
            StringComparison.Ordinal
        );
}
