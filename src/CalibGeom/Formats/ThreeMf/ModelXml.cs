using CalibGeom.Features.Files;
using CalibGeom.Meshes;

namespace CalibGeom.Formats.ThreeMf;

/// <summary>Reads the model part: units, metadata, resources, build.</summary>
internal sealed class ModelXml(PartXml xml, Faults faults)
{
    private const int DeepestNesting = 64,
        MostInstances = ReaderLimits.PackageInstances,
        MostTriangles = ReaderLimits.PackageTriangles;

    private static readonly HashSet<string> PlainMetadata =
    [
        "Title",
        "Designer",
        "Description",
        "Copyright",
        "LicenseTerms",
        "Rating",
        "CreationDate",
        "ModificationDate",
        "Application",
    ];

    private static readonly HashSet<string> Types = ["model", "solidsupport", "support", "surface", "other"];

    private readonly Dictionary<string, string> metadata = [];
    private readonly HashSet<int> properties = [];
    private readonly Dictionary<int, ModelObject> objects = [];
    private readonly List<(ModelObject Object, Affine3D Transform)> items = [];
    private bool resources;
    private bool build;
    private long instances;
    private long triangles;

    internal IReadOnlyDictionary<string, string> Metadata => metadata;

    internal IReadOnlyCollection<ModelObject> Objects => objects.Values;

    internal IReadOnlyList<(ModelObject Object, Affine3D Transform)> Items => items;

    /// <summary>
    /// Millimetres in one unit of the file, as a factor and a divisor: one of them is 1, so that no digit is lost.
    /// </summary>
    internal (double Factor, double Divisor) Unit { get; private set; } = (1, 1);

    internal void Read()
    {
        xml.Root("model", ThreeMfNames.Core);
        Model(xml.Attributes("unit", "requiredextensions", "recommendedextensions"));
        xml.Children(Section);
        xml.End();
        if (!resources)
            faults.Raise("the model has no <resources>", "missing resources");
        if (!build)
            faults.Raise("the model has no <build>", "missing builds");
    }

    private void Model(Dictionary<string, string> attributes)
    {
        string unit = attributes.GetValueOrDefault("unit", "millimeter");
        (double, double)? known = unit switch
        {
            "micron" => (1, 1000),
            "millimeter" => (1, 1),
            "centimeter" => (10, 1),
            "inch" => (25.4, 1),
            "foot" => (304.8, 1),
            "meter" => (1000, 1),
            _ => null,
        };
        if (known is null)
            faults.Raise(
                $"{xml.Place}: \"{unit}\" is no unit; 3MF has micron, millimeter, centimeter, inch, foot, meter",
                "unknown units, taken as mm"
            );
        Unit = known ?? (1, 1);
        foreach (
            string prefix in attributes
                .GetValueOrDefault("requiredextensions", "")
                .Split(' ', StringSplitOptions.RemoveEmptyEntries)
        )
            if (xml.LookupNamespace(prefix) is ThreeMfNames.Materials)
                faults.Remark($"{xml.Place}: \"{prefix}\"", "required extensions that only colour");
            else if (xml.LookupNamespace(prefix) is not (ThreeMfNames.Core or ThreeMfNames.TriangleSets))
                faults.Raise(
                    $"{xml.Place}: it requires the extension \"{xml.LookupNamespace(prefix) ?? prefix}\", which "
                        + $"is not read",
                    "required extensions"
                );
    }

    private void Section()
    {
        if (IsExtension())
            return;
        switch (xml.LocalName)
        {
            case "metadata" when !resources:
                ReadMetadata();
                break;
            case "resources" when !resources && !build:
                resources = true;
                xml.Attributes();
                xml.Children(Resource);
                break;
            case "build" when resources && !build:
                build = true;
                xml.Attributes();
                xml.Children(Item);
                break;
            case "metadata" or "resources" or "build":
                faults.Raise(
                    $"{xml.Place}: <{xml.LocalName}> is out of place; metadata, one resources and one build "
                        + $"come in this order",
                    "sections out of place"
                );
                break;
            default:
                xml.Unknown();
                break;
        }
    }

    private void ReadMetadata()
    {
        string place = xml.Place;
        string? name = xml.Attributes("name", "preserve", "type").GetValueOrDefault("name");
        int colon = name?.IndexOf(':') ?? -1;
        string? ns = colon < 0 ? null : xml.LookupNamespace(name![..colon]);
        string text = xml.Text();
        if (string.IsNullOrEmpty(name))
            faults.Raise($"{place}: metadata without a name", "metadata without a name");
        else if (colon < 0 ? !PlainMetadata.Contains(name) : ns is null)
            faults.Remark(
                $"{place}: metadata \"{name}\" is neither a name of the core specification nor of a declared namespace",
                "metadata with unknown names"
            );
        else if (!metadata.TryAdd(colon < 0 ? name : $"{{{ns}}}{name[(colon + 1)..]}", text))
            faults.Raise($"{place}: metadata \"{name}\" is there twice", "repeated metadata");
    }

    private void Resource()
    {
        if (xml.Namespace != ThreeMfNames.Core)
        {
            if (NumberText.TryIndex(xml.Attribute("id"), out int id))
                Claim(id, properties.Add);
            IsExtension();
        }
        else if (xml.LocalName == "object")
            ReadObject();
        else if (xml.LocalName == "basematerials")
            BaseMaterials();
        else
            xml.Unknown();
    }

    private void BaseMaterials()
    {
        Claim(Id(xml.Attributes("id"), "id"), properties.Add);
        xml.Children(() =>
        {
            Dictionary<string, string> attributes = xml.Attributes("name", "displaycolor");
            string color = attributes.GetValueOrDefault("displaycolor", "");
            bool good = color.Length is 7 or 9 && color[0] == '#' && color.Skip(1).All(char.IsAsciiHexDigit);
            if (!good || !attributes.ContainsKey("name"))
                faults.Raise(
                    $"{xml.Place}: a base material needs a name and a displaycolor #RRGGBB or #RRGGBBAA",
                    "base materials without name or colour"
                );
        });
    }

    private void ReadObject()
    {
        Dictionary<string, string> attributes = xml.Attributes(
            "id",
            "type",
            "thumbnail",
            "partnumber",
            "name",
            "pid",
            "pindex"
        );
        string place = xml.Place,
            type = attributes.GetValueOrDefault("type", "model");
        var item = new ModelObject(Id(attributes, "id"), attributes.GetValueOrDefault("name", ""), type);
        if (!Types.Contains(type))
            faults.Raise(
                $"{place}: \"{type}\" is no object type; 3MF has {string.Join(", ", Types)}",
                "unknown object types"
            );
        if (attributes.ContainsKey("pindex") && !attributes.ContainsKey("pid"))
            faults.Raise($"{place}: pindex without pid", "properties that do not exist");
        if (attributes.ContainsKey("pid"))
            RequireProperty(Id(attributes, "pid"), place);
        bool content = false;
        xml.Children(() =>
        {
            if (IsExtension())
                return;
            if (xml.LocalName is "mesh" or "components" && !content)
                content = true;
            else if (xml.LocalName != "metadatagroup")
                xml.Unknown();
            if (xml.LocalName == "mesh")
                ReadMesh(item);
            else if (xml.LocalName == "components")
                ReadComponents(item);
        });
        if (!content)
            faults.Raise($"{place}: object {item.Id} has neither a mesh nor components", "objects without content");
        Claim(item.Id, id => !properties.Contains(id) && objects.TryAdd(id, item));
    }

    private void ReadMesh(ModelObject item)
    {
        string place = xml.Place;
        var mesh = new MeshXml(xml);
        item.Mesh = mesh.Read();
        foreach (int id in mesh.PropertyIds)
            RequireProperty(id, place);
    }

    private void ReadComponents(ModelObject item)
    {
        xml.Attributes();
        xml.Children(() =>
        {
            if (IsExtension())
                return;
            if (xml.LocalName != "component")
                xml.Unknown();
            else if (Reference(xml.Attributes("objectid", "transform"), "component") is { } found)
                item.Add(found.Object, found.Transform);
        });
        if (item.Components.Count == 0)
            faults.Raise($"{xml.Place}: <components> without a component", "objects without content");
        if (item.Depth > DeepestNesting || item.Instances > MostInstances || item.Triangles > MostTriangles)
            throw faults.Fatal(
                $"{xml.Place}: the components of object {item.Id} make more than "
                    + $"{MostInstances} instances or {MostTriangles} triangles, or are nested more than "
                    + $"{DeepestNesting} deep",
                "Split it."
            );
    }

    private void Item()
    {
        if (IsExtension())
            return;
        if (xml.LocalName != "item")
        {
            xml.Unknown();
            return;
        }
        if (Reference(xml.Attributes("objectid", "transform", "partnumber"), "item") is not { } found)
            return;
        ModelObject item = found.Object;
        if (item.Type == "other")
            faults.Raise(
                $"{xml.Place}: an item may not be of type \"other\", as object {item.Id} is",
                "items of type other"
            );
        else if (item.Type is "support" or "surface")
            faults.Remark($"{xml.Place}: object {item.Id}", "items of type support or surface, which are no solids");
        else
            items.Add(found);
        instances += item.Instances;
        triangles += item.Triangles;
        if (instances > MostInstances || triangles > MostTriangles)
            throw faults.Fatal(
                $"{xml.Place}: the build makes more than {MostInstances} instances or {MostTriangles} triangles",
                "Split it."
            );
    }

    private (ModelObject Object, Affine3D Transform)? Reference(Dictionary<string, string> attributes, string what)
    {
        int id = Id(attributes, "objectid");
        Affine3D? transform = attributes.TryGetValue("transform", out string? text)
            ? NumberText.Transform(text)
            : Affine3D.Identity;
        if (transform is null)
            faults.Raise(
                $"{xml.Place}: a transform is 12 finite numbers, not \"{(text!.Length > 60 ? text[..60] : text)}\"",
                "components and items with a broken transform"
            );
        else if (!objects.TryGetValue(id, out ModelObject? item))
            faults.Raise(
                $"{xml.Place}: the {what} names object {id}, which is not defined before it",
                "components and items without an object"
            );
        else
            return (item, transform.Value);
        return null;
    }

    private int Id(Dictionary<string, string> attributes, string name)
    {
        if (attributes.TryGetValue(name, out string? text) && NumberText.TryIndex(text, out int id) && id > 0)
            return id;
        faults.Raise(
            $"{xml.Place}: {name} must be a whole number of 1 to 2147483647",
            "ids that are no whole number of 1 to 2147483647"
        );
        return 0;
    }

    private void Claim(int id, Func<int, bool> add)
    {
        if (objects.ContainsKey(id) || !add(id))
            faults.Raise($"{xml.Place}: resource id {id} is used twice", "resources with an id that was used before");
    }

    private void RequireProperty(int id, string place)
    {
        if (!properties.Contains(id))
            faults.Raise($"{place}: pid {id} names no property group defined before", "properties that do not exist");
    }

    private bool IsExtension()
    {
        if (xml.Namespace == ThreeMfNames.Core)
            return false;
        if (xml.Namespace != ThreeMfNames.TriangleSets)
            faults.Remark($"{xml.Place}: <{xml.LocalName}>", $"elements of the extension \"{xml.Namespace}\"");
        return true;
    }
}
