namespace CalibGeom.Features.Tests;

public class InputExceptionTests
{
    [Fact]
    public void ARefusedArgumentGivesItsBareSentence()
    {
        var within = Assert.Throws<ArgumentException>(() => Require.Within(7, 0, 1, "rest", "s", "rest"));
        Assert.Equal("The rest must be 0 to 1 s, not 7.", InputException.Because(InputIds.Spec, within).Message);
        var range = Assert.Throws<ArgumentOutOfRangeException>(() => ArgumentOutOfRangeException.ThrowIfNegative(-1));
        var told = InputException.Because(InputIds.Spec, range, "line 3: ");
        Assert.StartsWith("line 3: ", told.Message, StringComparison.Ordinal);
        Assert.DoesNotContain("Parameter", told.Message, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', told.Message);
        Assert.Same(range, told.InnerException);
        Assert.Equal("No name", InputException.Because(InputIds.Spec, new ArgumentException("No name")).Message);
        // A sentence that speaks of a parameter itself is kept.
        var odd = new ArgumentException("Say (Parameter 'a') in full", "b");
        Assert.Equal("Say (Parameter 'a') in full", InputException.Because(InputIds.Spec, odd).Message);
    }

    [Theory]
    [InlineData(null, null, null, null, "")]
    [InlineData("r.csv", null, null, null, "r.csv")]
    [InlineData("r.csv", 3, null, null, "r.csv:3")]
    [InlineData(null, 3, 5, null, "Line 3, column 5")]
    [InlineData(null, null, null, "$.a", "$.a")]
    [InlineData(null, 3, 5, "$.a", "$.a (line 3, column 5)")]
    [InlineData("r.json", null, null, "$.a", "r.json: $.a")]
    [InlineData("r.json", 3, 5, "$.a", "r.json:3:5: $.a")]
    public void APlaceReadsAsOneWouldSayIt(string? file, int? line, int? column, string? path, string expected)
    {
        var place = new InputPlace(file, line, column, path);
        Assert.Equal(expected, place.ToString());
        var error = new InputException(InputIds.Spec, "It is wrong.", place);
        Assert.Equal(expected.Length == 0 ? "It is wrong." : expected + ": It is wrong.", error.Message);
        Assert.Equal(("It is wrong.", place), (error.Sentence, error.Place));
        Assert.Equal((InputIds.Spec, InputIds.Spec), (error.Id, error.In("other.json").Id));
    }

    [Fact]
    public void TablesSayWhereByPropertiesToo()
    {
        var csv = Assert.Throws<InputException>(() =>
            FeatureTableCsv.Parse("feature,nominal,unit,axis,how\nbox1.height,1,inch,z,\n")
        );
        Assert.Equal(2, csv.Place.Line);
        Assert.StartsWith("the unit of box1.height", csv.Sentence, StringComparison.Ordinal);
        var json = Assert.Throws<InputException>(() => FeatureTableJson.Parse("{\"features\":[{\n\"feature\":1}]}"));
        Assert.Equal(("$.features[0].feature", 2), (json.Place.Path, json.Place.Line));
        var row = Assert.Throws<InputException>(() => FeatureTableJson.Parse("{\"features\":[null]}"));
        Assert.Equal("$.features[0]", row.Place.Path);
    }
}
