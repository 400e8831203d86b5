using CalibGeom.TestObjects;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.Docs;

public class JsonExampleTests
{
    [Fact]
    public async Task TheExampleRunsAndStandsOnThePage()
    {
        string slip = "",
            where = "";
        using MemoryStream canonical = new(),
            table = new();

        // begin
        string text = """{ "title": "Demo grey", "nest": { "sizes": [8, 11.2], "clearance": [0.06] } }""";
        try
        {
            SpecJson.Parse(text);
        }
        catch (InputException e)
        {
            (slip, int? line, string? path) = (e.Sentence, e.Place.Line, e.Place.Path);
            where = $"{path} in line {line}";
        }
        TestObjectSpec spec = SpecJson.Parse(text.Replace("clearance", "clearances"));
        TestObject made = TestObject.Of(spec);
        await SpecJson.WriteAsync(canonical, spec);
        await FeatureTableJson.WriteAsync(table, made.Features);
        table.Position = 0;
        FeatureTable back = await FeatureTableJson.ReadAsync(table);
        // end

        Assert.Contains("clearances", slip, StringComparison.Ordinal);
        Assert.Contains("clearance in line 1", where, StringComparison.Ordinal);
        Assert.Equal(SpecJson.ToCanonicalBytes(spec), canonical.ToArray());
        Assert.Equal(made.Features.Select(f => f.Id), back.Select(f => f.Id));
        DocExample.RequireOn("docs/json.md");
    }

    [Fact]
    public void ThePageNamesEverySchema()
    {
        string page = File.ReadAllText(Path.Combine(Repository.Root, "docs", "json.md"));
        Assert.All(
            Directory.GetFiles(Path.Combine(Repository.Root, "docs", "schemas")),
            file => Assert.Contains($"(schemas/{Path.GetFileName(file)})", page, StringComparison.Ordinal)
        );
    }
}
