using System.Text.Json.Nodes;
using CalibGeom.TestObjects.Parts;
using CalibGeom.TestObjects.Parts.Nest;
using CalibGeom.TestObjects.Parts.Plinth;

namespace CalibGeom.TestObjects.Specs;

/// <summary>A spec under way: a complete basis over which checked values are laid one by one.</summary>
internal sealed class SpecLayers
{
    private readonly JsonObject values;
    private readonly Dictionary<string, InputPlace> places = new(StringComparer.Ordinal);

    private readonly IReadOnlyList<ITestPart> ownParts;

    internal SpecLayers(TestObjectSpec basis)
    {
        values = SpecJson.ToNode(basis);
        ownParts = basis.OwnParts;
    }

    /// <summary>Leaves a group out.</summary>
    internal void Remove(SpecGroup group)
    {
        values[group.Name] = null;
        foreach (SpecParameter parameter in group.Parameters)
            places.Remove(parameter.Path);
    }

    /// <summary>Makes sure that a group stands, with its defaults if it was left out.</summary>
    internal JsonObject Open(SpecGroup group)
    {
        if (values[group.Name] is JsonObject present)
            return present;
        JsonObject added = SpecDefaults.Of(group.Name);
        values[group.Name] = added;
        return added;
    }

    /// <summary>Sets a checked value; the place is for a message about it later.</summary>
    internal void Set(SpecParameter parameter, JsonNode value, InputPlace place)
    {
        JsonObject owner = parameter.Group.Length == 0 ? values : Open(SpecParameters.FindGroup(parameter.Group)!);
        owner[parameter.Name] = value;
        places[parameter.Path] = place;
    }

    internal SpecLayers Assign(IEnumerable<string> assignments)
    {
        foreach (string assignment in assignments)
            SpecAssignment.Apply(assignment, this);
        return this;
    }

    /// <summary>The spec, once values that depend on each other agree.</summary>
    /// <exception cref="InputException">They do not agree.</exception>
    internal TestObjectSpec ToSpec()
    {
        if (values["nest"] is JsonObject nest)
            LetClearancesFollow(nest);
        try
        {
            return SpecJson.FromNode(values) with { OwnParts = ownParts };
        }
        catch (ArgumentException e) when (e.ParamName == nameof(TestObjectSpec.Nest))
        {
            throw Disagreement(e, NestParameters.Clearances, NestParameters.Sizes);
        }
        catch (ArgumentException e) when (e.ParamName == nameof(TestObjectSpec.Plinth))
        {
            throw Disagreement(e, PlinthParameters.EdgeChamfer, PlinthParameters.Thickness);
        }
    }

    /// <summary>
    /// Clearances that nobody gave, and that are the same for every joint, follow the number of boxes.
    /// </summary>
    private void LetClearancesFollow(JsonObject nest)
    {
        if (places.ContainsKey(NestParameters.Clearances.Path))
            return;
        string[] given = nest["clearances"]!.AsArray().Select(c => c!.ToJsonString()).Distinct().ToArray();
        if (given.Length > 1)
            return;
        JsonNode one = given.Length == 1 ? JsonNode.Parse(given[0])! : NestSpec.DefaultClearance;
        int joints = nest["sizes"]!.AsArray().Count - 1;
        nest["clearances"] = new JsonArray(Enumerable.Range(0, joints).Select(_ => one.DeepClone()).ToArray());
    }

    private InputException Disagreement(ArgumentException e, SpecParameter first, SpecParameter second) =>
        new(
            InputIds.Spec,
            InputException.Because(InputIds.Spec, e).Sentence,
            places.GetValueOrDefault(first.Path)
                ?? places.GetValueOrDefault(second.Path)
                ?? new InputPlace(Path: first.Path),
            e
        );
}
