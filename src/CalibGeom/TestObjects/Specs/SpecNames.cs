namespace CalibGeom.TestObjects.Specs;

/// <summary>What to say about names that a spec does not have.</summary>
internal static class SpecNames
{
    /// <summary>An unknown name in a group, or at the top of a spec.</summary>
    internal static string Unknown(string name, SpecGroup? group)
    {
        string[] known = group is null
            ? [SpecParameters.Title.Name, .. SpecParameters.Groups.Select(g => g.Name)]
            : [.. group.Parameters.Select(p => p.Name)];
        string where = group is null ? "a spec" : group.Name;
        if (Nearest(name, known) is { } near)
            return $"{where} has no \"{Shorten(name)}\". Did you mean \"{near}\"?";
        SpecParameter? elsewhere = SpecParameters
            .Groups.SelectMany(g => g.Parameters)
            .FirstOrDefault(p => p.Name == name);
        string hint = elsewhere is null ? "" : $" There is {elsewhere.Path}.";
        return $"{where} has no \"{Shorten(name)}\".{hint} Its names are {string.Join(", ", known)}.";
    }

    /// <summary>A group that cannot be left out.</summary>
    internal static string Required(SpecGroup group) =>
        $"{group.Name} cannot be left out. Leave the name away for its defaults.";

    /// <summary>What is wrong with a word, or null.</summary>
    internal static string? ProblemOfWord(string word, SpecParameter parameter)
    {
        if (parameter.Words.Contains(word))
            return null;
        string near = Nearest(word, parameter.Words) is { } n ? $" Did you mean \"{n}\"?" : "";
        return $"{parameter.Path} is \"{Shorten(word)}\"; it must be {parameter.Range}.{near}";
    }

    /// <summary>The known name that is nearest to a misspelt one, or null when none is near.</summary>
    internal static string? Nearest(string name, IEnumerable<string> known)
    {
        if (name.Length > 40)
            return null;
        int reach = Math.Max(1, name.Length / 3);
        return known
            .Select(k => (Name: k, Distance: Spelling.Distance(name.ToUpperInvariant(), k.ToUpperInvariant())))
            .Where(k => k.Distance <= reach)
            .OrderBy(k => k.Distance)
            .Select(k => k.Name)
            .FirstOrDefault();
    }

    private static string Shorten(string name) => name.Length <= 60 ? name : $"{name[..60]}...";
}
