using System.Text;
using CalibGeom.TestObjects.Specs;

namespace CalibGeom.Tests.TestObjects;

/// <summary>The tables of docs/spec.md, made from what the code knows of each parameter.</summary>
internal static class SpecReference
{
    internal const string Begin = "<!-- made from the code: begin -->\n";
    internal const string End = "<!-- made from the code: end -->\n";

    internal static string Tables()
    {
        var text = new StringBuilder();
        Heading(text, "title", "");
        Row(text, SpecParameters.Title);
        foreach (SpecGroup group in SpecParameters.Groups)
        {
            Heading(text.Append('\n'), group.Name, $"{group.Meaning} {LeavingOut(group)}\n\n");
            foreach (SpecParameter parameter in group.Parameters)
                Row(text, parameter);
        }
        return text.ToString();
    }

    private static string LeavingOut(SpecGroup group) =>
        group switch
        {
            { Name: "process" } =>
                "`null`, the default, says that it is not known; the defaults below hold as soon as the group stands.",
            { Optional: true } => "`null` leaves it out.",
            _ => "It cannot be left out.",
        };

    private static void Heading(StringBuilder text, string name, string sentence) =>
        text.Append("### `")
            .Append(name)
            .Append("`\n\n")
            .Append(sentence)
            .Append("| name | what it is | range | default | why |\n|---|---|---|---|---|\n");

    private static void Row(StringBuilder text, SpecParameter p) =>
        text.Append("| `")
            .Append(p.Name)
            .Append("` | ")
            .Append(p.Meaning)
            .Append(" | ")
            .Append(p.Range)
            .Append(" | `")
            .Append(SpecLayout.Value(SpecDefaults.Of(p)))
            .Append("` | ")
            .Append(p.Why)
            .Append(" |\n");
}
