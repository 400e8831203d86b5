using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;

namespace CalibGeom.TestObjects.Specs;

/// <summary>Values given as <c>name=value</c>. Text and words need no quotes, and a list no brackets.</summary>
internal static class SpecAssignment
{
    private const string Commas = " Numbers have a decimal point; a comma parts the value along X from that along Y.";

    /// <exception cref="InputException">An unknown name or a bad value.</exception>
    internal static void Apply(string assignment, SpecLayers layers)
    {
        int sign = assignment.IndexOf('=', StringComparison.Ordinal);
        if (sign <= 0)
            throw new InputException(
                InputIds.Spec,
                $"{Shorten(assignment)}: a value is set as name=value, such as columns.height=10."
            );
        string name = assignment[..sign].Trim(),
            value = assignment[(sign + 1)..].Trim();
        if (SpecParameters.FindGroup(name) is { } group)
        {
            ApplyGroup(group, value, assignment, layers);
            return;
        }
        SpecParameter parameter = Find(name, assignment);
        layers.Set(parameter, Parse(parameter, value, assignment), new InputPlace(Path: Shorten(assignment)));
    }

    private static void ApplyGroup(SpecGroup group, string value, string assignment, SpecLayers layers)
    {
        if (value == "{}")
            layers.Open(group);
        else if (value != "null")
            throw new InputException(
                InputIds.Spec,
                $"{Shorten(assignment)}: a group is set to null, which leaves it out, or to {{}}, which brings "
                    + $"it in; set its values one by one, such as {group.Parameters[0].Path}=..."
            );
        else if (!group.Optional)
            throw new InputException(InputIds.Spec, $"{Shorten(assignment)}: {SpecNames.Required(group)}");
        else
            layers.Remove(group);
    }

    private static SpecParameter Find(string name, string assignment)
    {
        if (name == SpecParameters.Title.Name)
            return SpecParameters.Title;
        string[] parts = name.Split('.');
        SpecGroup? group = SpecParameters.FindGroup(parts[0]);
        if (group is null || parts.Length != 2)
            throw new InputException(
                InputIds.Spec,
                $"{Shorten(assignment)}: {SpecNames.Unknown(group is null ? parts[0] : name, null)}"
            );
        return group.Find(parts[1])
            ?? throw new InputException(InputIds.Spec, $"{Shorten(assignment)}: {SpecNames.Unknown(parts[1], group)}");
    }

    private static JsonNode Parse(SpecParameter parameter, string value, string assignment)
    {
        var reader = new Utf8JsonReader(Encoding.UTF8.GetBytes(Complete(parameter, value)), SpecScanner.ReaderOptions);
        string comma =
            parameter.Kind == SpecKind.PerAxis && value.Contains(',', StringComparison.Ordinal) ? Commas : "";
        InputException Refuse(string path, long offset, string problem) =>
            new($"{Shorten(assignment)}: {problem}{comma}");
        try
        {
            if (!reader.Read())
                throw new JsonException("There is no value.");
            JsonNode node = SpecValue.Read(ref reader, parameter, parameter.Path, Refuse);
            SpecScanner.RequireEnd(ref reader);
            return node;
        }
        catch (JsonException e)
        {
            throw new InputException(
                InputIds.Spec,
                $"{Shorten(assignment)}: \"{Shorten(value)}\" cannot be read as {parameter.Path} "
                    + $"({parameter.Range}). Write numbers with a decimal point.",
                e
            );
        }
    }

    private static string Complete(SpecParameter parameter, string value) =>
        parameter.Kind switch
        {
            SpecKind.Text or SpecKind.Word when !value.StartsWith('"') => JsonSerializer.Serialize(
                value,
                SpecJsonContext.Default.String
            ),
            SpecKind.Numbers or SpecKind.PerAxisList or SpecKind.Size when !value.StartsWith('[') => $"[{value}]",
            SpecKind.PerAxis when value.Contains(',', StringComparison.Ordinal) && !value.StartsWith('[') =>
                $"[{value}]",
            _ => value,
        };

    private static string Shorten(string text) => text.Length <= 80 ? text : $"{text[..80]}...";
}
