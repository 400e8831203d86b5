using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;
using CalibGeom.Verification.Clearances;
using CalibGeom.Verification.Readings;

namespace CalibGeom.Verification.Tests.Docs;

/// <summary>The five lines of docs/predict.md.</summary>
public class PredictPageTests
{
    [Fact]
    public void FiveLinesGiveAnAnswer()
    {
        string path = Path.GetTempFileName(),
            answer;
        try
        {
            File.WriteAllText(
                path,
                "# material rigid\nfeature,value\nbox1.outside.x,8.02\nbox2.inside.x,8.09\nspan.x,40.01\n"
            );

            // begin
            FeatureTable features = TestObject.Of(Presets.Standard).Features;
            ReadingSet readings = ReadingsFile.Read(path);
            ClearancePrediction prediction = ClearancePrediction.Of(features, readings);
            AxisClearance joint1 = prediction.Joints[0].Axes[0];
            answer = FormattableString.Invariant(
                $"{joint1.Clearance.Value:0.000} mm per side, give or take {joint1.Clearance.Expanded:0.000}"
            );
            // end
        }
        finally
        {
            File.Delete(path);
        }
        Assert.Equal("0.035 mm per side, give or take 0.026", answer);
        DocExample.RequireOn("docs/predict.md");
    }
}
