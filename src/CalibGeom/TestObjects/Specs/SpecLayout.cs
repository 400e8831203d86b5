using System.Globalization;
using System.Text;
using System.Text.Json.Nodes;

namespace CalibGeom.TestObjects.Specs;

/// <summary>Specs as text for people: one parameter a line.</summary>
internal static class SpecLayout
{
    private const int Width = 110;

    internal static string Plain(JsonObject spec) => Text(spec, null, commented: false);

    internal static string Commented(JsonObject spec, string? heading) => Text(spec, heading, commented: true);

    /// <summary>A value on one line, such as <c>[8, 11.2]</c>.</summary>
    internal static string Value(JsonNode? node) =>
        node switch
        {
            null => "null",
            JsonArray list => $"[{string.Join(", ", list.Select(Value))}]",
            _ => SpecJson.Raw(node),
        };

    private static string Text(JsonObject spec, string? heading, bool commented)
    {
        var text = new StringBuilder();
        if (heading is not null)
            Comment(text, "", heading);
        text.Append("{\n");
        if (commented)
            Comment(text, "  ", SpecParameters.Title.Sentences);
        text.Append(CultureInfo.InvariantCulture, $"  \"title\": {Value(spec["title"])}");
        foreach (SpecGroup group in SpecParameters.Groups)
            Group(text.Append(commented ? ",\n\n" : ",\n"), group, spec[group.Name]?.AsObject(), commented);
        return text.Append("\n}\n").ToString();
    }

    private static void Group(StringBuilder text, SpecGroup group, JsonObject? values, bool commented)
    {
        if (commented)
            Comment(text, "  ", group.Optional ? $"{group.Meaning} null leaves it out." : group.Meaning);
        if (values is null && commented)
            text.Append(CultureInfo.InvariantCulture, $"  // \"{group.Name}\": {OneLine(group)},\n");
        if (values is null)
        {
            text.Append(CultureInfo.InvariantCulture, $"  \"{group.Name}\": null");
            return;
        }
        text.Append(CultureInfo.InvariantCulture, $"  \"{group.Name}\": {{");
        string separator = "\n";
        foreach (SpecParameter parameter in group.Parameters)
        {
            text.Append(separator);
            if (commented)
                Comment(text, "    ", parameter.Sentences);
            text.Append(CultureInfo.InvariantCulture, $"    \"{parameter.Name}\": {Value(values[parameter.Name])}");
            separator = ",\n";
        }
        text.Append("\n  }");
    }

    private static string OneLine(SpecGroup group) =>
        $"{{ {string.Join(", ", SpecDefaults.Of(group.Name).Select(v => $"\"{v.Key}\": {Value(v.Value)}"))} }}";

    private static void Comment(StringBuilder text, string indent, string sentence)
    {
        string line = $"{indent}//";
        foreach (string word in sentence.Split(' '))
        {
            if (line.Length + word.Length >= Width)
            {
                text.Append(line).Append('\n');
                line = $"{indent}//";
            }
            line += $" {word}";
        }
        text.Append(line).Append('\n');
    }
}
