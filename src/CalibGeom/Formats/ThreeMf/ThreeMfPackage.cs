using CalibGeom.Formats.ThreeMf.Zip;

namespace CalibGeom.Formats.ThreeMf;

/// <summary>
/// The package round a model: finds the model part by the root relationships and checks what the conventions ask of
/// them.
/// </summary>
internal sealed class ThreeMfPackage
{
    private readonly ZipReader zip;
    private readonly Faults faults;

    internal ThreeMfPackage(Stream stream, Faults faults)
    {
        this.faults = faults;
        zip = new(stream, faults);
        RequireContentTypes();
        ModelPart = FindModel();
        Relationships(RelationshipsOf(ModelPart), ModelPart);
    }

    /// <summary>The name of the model part in the zip.</summary>
    internal string ModelPart { get; }

    internal PartXml OpenModel() => new(zip.Open(ModelPart), ModelPart, faults);

    private string FindModel()
    {
        if (!zip.Contains(ThreeMfNames.RootRelationships))
            throw faults.Fatal("has no _rels/.rels; it is a zip but no 3MF");
        var models = new List<string>();
        foreach ((string type, string target, bool external) in Relationships(ThreeMfNames.RootRelationships, ""))
            if (type == ThreeMfNames.ModelRelationship && !external)
                models.Add(target);
        if (models.Count > 1)
            faults.Raise($"_rels/.rels names {models.Count} models; a 3MF has one", "models beyond the first");
        return models.FirstOrDefault(zip.Contains)
            ?? throw faults.Fatal("_rels/.rels names no 3D model that is in the package");
    }

    private void RequireContentTypes()
    {
        if (!zip.Contains(ThreeMfNames.ContentTypesPart))
        {
            faults.Raise("has no [Content_Types].xml", "missing lists of content types");
            return;
        }
        using var xml = new PartXml(zip.Open(ThreeMfNames.ContentTypesPart), ThreeMfNames.ContentTypesPart, faults);
        bool model = false;
        xml.Guard(() =>
        {
            xml.Root("Types", ThreeMfNames.ContentTypes);
            xml.Children(() =>
                model |=
                    xml.Attributes("Extension", "PartName", "ContentType").GetValueOrDefault("ContentType")
                    == ThreeMfNames.ModelType
            );
            xml.End();
        });
        if (!model)
            faults.Raise($"[Content_Types].xml does not name {ThreeMfNames.ModelType}", "missing content types");
    }

    private List<(string Type, string Target, bool External)> Relationships(string part, string source)
    {
        var found = new List<(string Type, string Target, bool External)>();
        if (!zip.Contains(part))
            return found;
        using var xml = new PartXml(zip.Open(part), part, faults);
        xml.Guard(() =>
        {
            xml.Root("Relationships", ThreeMfNames.Relationships);
            xml.Children(() => found.Add(Relationship(xml, source)));
            xml.End();
        });
        foreach (IGrouping<(string, string), (string, string, bool)> same in found.GroupBy(r => (r.Type, r.Target)))
            if (same.Count() > 1)
                faults.Raise($"{part} names {same.Key.Item2} twice for one purpose", "repeated relationships");
        if (found.Count(r => r.Type == ThreeMfNames.PrintTicketRelationship) > 1)
            faults.Raise($"{part} names more than one print ticket", "print tickets beyond the first");
        return found;
    }

    private (string Type, string Target, bool External) Relationship(PartXml xml, string source)
    {
        Dictionary<string, string> attributes = xml.Attributes("Id", "Type", "Target", "TargetMode");
        string type = attributes.GetValueOrDefault("Type", ""),
            target = attributes.GetValueOrDefault("Target", "");
        bool external = attributes.GetValueOrDefault("TargetMode") == "External";
        if (external)
        {
            if (type == ThreeMfNames.ModelRelationship)
                faults.Raise(
                    $"{xml.Place}: the model lies outside of the package at {target}",
                    "links out of the package"
                );
            return (type, target, true);
        }
        string? resolved = Resolve(source, target);
        if (resolved is null)
            faults.Raise($"{xml.Place}: \"{target}\" leads out of the package", "links out of the package");
        else if (!zip.Contains(resolved) && type != ThreeMfNames.ModelRelationship)
            faults.Remark(
                $"{xml.Place}: there is no part \"{resolved}\" in the package",
                "links to parts that do not exist"
            );
        else if (!zip.Contains(resolved))
            faults.Raise(
                $"{xml.Place}: there is no part \"{resolved}\" in the package",
                "links to parts that do not exist"
            );
        return (type, resolved ?? "", false);
    }

    /// <summary>
    /// The part a target names, seen from the part that names it; null when it leads out of the package.
    /// </summary>
    private static string? Resolve(string source, string target)
    {
        if (target.Contains('\\') || target.Contains(':'))
            return null;
        var segments = new List<string>(target.StartsWith('/') ? [] : source.Split('/')[..^1]);
        foreach (string segment in Uri.UnescapeDataString(target).Split('/'))
        {
            if (segment is "" or ".")
                continue;
            if (segment != "..")
                segments.Add(segment);
            else if (segments.Count == 0)
                return null;
            else
                segments.RemoveAt(segments.Count - 1);
        }
        return string.Join('/', segments);
    }

    private static string RelationshipsOf(string part)
    {
        int slash = part.LastIndexOf('/') + 1;
        return $"{part[..slash]}_rels/{part[slash..]}.rels";
    }
}
