using System.Text;
using System.Text.Json;
using CalibGeom.TestObjects.Specs;
using FsCheck.Fluent;
using FsCheck.Xunit;
using Json.Schema;

namespace CalibGeom.Tests.TestObjects;

/// <summary>docs/spec.md and docs/spec.schema.json say what the code does.</summary>
public class SpecDocumentTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(SpecSchema.ToText());

    [Fact]
    public void TheSchemaFileIsUpToDate() =>
        RepositoryFile.RequireHolds("docs/spec.schema.json", Encoding.UTF8.GetBytes(SpecSchema.ToText()));

    [Fact]
    public void TheReferenceIsUpToDate()
    {
        string text = Document();
        int begin = text.IndexOf(SpecReference.Begin, StringComparison.Ordinal) + SpecReference.Begin.Length;
        int end = text.IndexOf(SpecReference.End, StringComparison.Ordinal);
        string expected = $"{text[..begin]}\n{SpecReference.Tables()}\n{text[end..]}";
        RepositoryFile.RequireHolds("docs/spec.md", Encoding.UTF8.GetBytes(expected));
    }

    [Fact]
    public void EveryExampleIsASpec()
    {
        string[] blocks = Document()
            .Split("```json\n")
            .Skip(1)
            .Select(b => b[..b.IndexOf("```", StringComparison.Ordinal)])
            .ToArray();
        Assert.NotEmpty(blocks);
        Assert.All(blocks, block => SpecJson.Parse(block));
    }

    [Fact]
    public void TheSchemaAcceptsEveryPreset() =>
        Assert.All(
            Presets.All,
            p => Assert.True(IsValid(Encoding.UTF8.GetString(SpecJson.ToCanonicalBytes(p.Spec))), p.Name)
        );

    [Property(MaxTest = 50)]
    public FsCheck.Property TheSchemaAcceptsEverySpec() =>
        Prop.ForAll(
            RandomSpecs.Any.ToArbitrary(),
            spec => IsValid(Encoding.UTF8.GetString(SpecJson.ToCanonicalBytes(spec)))
        );

    [Theory]
    [InlineData("[]")]
    [InlineData("""{"nets":{}}""")]
    [InlineData("""{"plinth":null}""")]
    [InlineData("""{"title":"a_b"}""")]
    [InlineData("""{"title":"12345678901234567890123456789012345678901"}""")]
    [InlineData("""{"nest":{"sizes":[]}}""")]
    [InlineData("""{"nest":{"sizes":[8,"11"]}}""")]
    [InlineData("""{"nest":{"sizes":[8,2]}}""")]
    [InlineData("""{"nest":{"width":8}}""")]
    [InlineData("""{"nest":{"sizes":[8,12,16],"clearances":[0.05,[0.1]]}}""")]
    [InlineData("""{"process":{"pixelPitch":0.6}}""")]
    [InlineData("""{"process":{"plate":[100,100]}}""")]
    [InlineData("""{"process":{"snap":"pixel"}}""")]
    [InlineData("""{"process":{"baseLayers":2.5}}""")]
    [InlineData("""{"tilt":{"axis":"z"}}""")]
    public void TheSchemaAndTheReaderRefuseTheSame(string text)
    {
        Assert.False(IsValid(text));
        Assert.Throws<InputException>(() => SpecJson.Parse(text));
    }

    private static string Document() => File.ReadAllText(Path.Combine(Repository.Root, "docs", "spec.md"));

    private static bool IsValid(string text)
    {
        using JsonDocument document = JsonDocument.Parse(text);
        return Schema.Evaluate(document.RootElement).IsValid;
    }
}
