using System.Reflection;
using System.Runtime.CompilerServices;
using System.Text.RegularExpressions;
using System.Xml.Linq;

namespace CalibGeom.Cli.Tests.Threads;

/// <summary>
/// What docs/web.md says of all libraries: each public type says how threads may use it, none keeps anything that
/// changes for the whole process but the list of unfinished files, and none writes to the console.
/// </summary>
public partial class PublicTypesTests
{
    /// <summary>Tables that are filled where they are declared and only looked up afterwards.</summary>
    private static readonly string[] Tables =
    [
        "Iso286.Shafts",
        "CouponValues.Felt",
        "ObjReader.Skipped",
        "ObjReader.NoSurface",
        "ObjReader.FreeForm",
        "ModelXml.PlainMetadata",
        "ModelXml.Types",
        "StrokeFont.Lines",
    ];

    private static readonly Type[] Growing =
    [
        typeof(List<>),
        typeof(Dictionary<,>),
        typeof(HashSet<>),
        typeof(Queue<>),
        typeof(Stack<>),
        typeof(SortedSet<>),
        typeof(System.Collections.Concurrent.ConcurrentDictionary<,>),
        typeof(System.Collections.Concurrent.ConcurrentBag<>),
        typeof(System.Collections.Concurrent.ConcurrentQueue<>),
        typeof(ThreadLocal<>),
        typeof(AsyncLocal<>),
        typeof(StrongBox<>),
        typeof(System.Text.StringBuilder),
    ];

    [Fact]
    public void EveryTypeSaysHowThreadsMayUseIt()
    {
        IReadOnlyDictionary<string, string> said = Said();
        Assert.Empty(
            PublicLibraries
                .All.SelectMany(l => l.GetExportedTypes())
                .Where(t => !FollowsFromItsKind(t) && !Claim().IsMatch(said.GetValueOrDefault(NameOf(t), "")))
                .Select(t => t.FullName)
        );
    }

    [Fact]
    public void WhatIsSaidToBeImmutableCannotBeSet()
    {
        IReadOnlyDictionary<string, string> said = Said();
        Type[] immutable =
        [
            .. PublicLibraries
                .All.SelectMany(l => l.GetExportedTypes())
                .Where(t => Immutable().IsMatch(said.GetValueOrDefault(NameOf(t), ""))),
        ];
        Assert.True(immutable.Length > 150, $"{immutable.Length} types");
        Assert.Empty(
            immutable.SelectMany(t => t.GetProperties()).Where(CanBeSet).Select(p => $"{p.DeclaringType}.{p.Name}")
        );
        Assert.DoesNotContain(immutable.SelectMany(t => t.GetFields()), f => !f.IsStatic && !f.IsInitOnly);
    }

    [Fact]
    public void NothingThatChangesIsKeptForTheWholeProcess()
    {
        string[] changing =
        [
            .. PublicLibraries
                .All.SelectMany(l => l.GetTypes())
                .Where(t => !IsMadeByTheCompiler(t))
                .SelectMany(t => t.GetFields(BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic))
                .Where(f => f.DeclaringType is { } d && !IsMadeByTheCompiler(f) && !d.ContainsGenericParameters)
                .Where(f => !f.IsLiteral && (!f.IsInitOnly || Grows(f.FieldType)))
                .Select(f => $"{f.DeclaringType!.Name}.{f.Name}"),
        ];
        Assert.Equal(
            [.. Tables.Append("UnfinishedFiles.Paths").Order(StringComparer.Ordinal)],
            changing.Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public void NoLibraryKnowsTheConsole() =>
        Assert.All(
            PublicLibraries.All,
            l => Assert.DoesNotContain(l.GetReferencedAssemblies(), a => a.Name == "System.Console")
        );

    /// <summary>Values are copied, and what is static holds nothing that changes: the test beside this one.</summary>
    private static bool FollowsFromItsKind(Type t) =>
        t.IsEnum
        || (t.IsAbstract && t.IsSealed)
        || t.IsSubclassOf(typeof(Delegate))
        || (t.IsValueType && t.IsDefined(typeof(IsReadOnlyAttribute)))
        || t.IsSubclassOf(typeof(Exception));

    private static bool CanBeSet(PropertyInfo p) =>
        p.SetMethod is { IsPublic: true, IsStatic: false } set
        && !set.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));

    private static bool Grows(Type t) => Growing.Contains(t.IsGenericType ? t.GetGenericTypeDefinition() : t);

    private static bool IsMadeByTheCompiler(MemberInfo m) =>
        !m.Name.EndsWith(">k__BackingField", StringComparison.Ordinal)
        && (m.Name.Contains('<', StringComparison.Ordinal) || m.IsDefined(typeof(CompilerGeneratedAttribute)));

    private static string NameOf(Type t) => t.FullName!.Replace('+', '.');

    private static Dictionary<string, string> Said() =>
        Directory
            .GetFiles(AppContext.BaseDirectory, "CalibGeom*.xml")
            .Where(f => !f.EndsWith("Tests.xml", StringComparison.Ordinal))
            .SelectMany(f => XDocument.Load(f).Descendants("member"))
            .Where(m => ((string)m.Attribute("name")!).StartsWith("T:", StringComparison.Ordinal))
            .ToDictionary(m => ((string)m.Attribute("name")!)[2..], m => Space().Replace(m.Value, " "));

    [GeneratedRegex("[Ii]mmutable|afe to (share between|use from several) threads")]
    private static partial Regex Claim();

    [GeneratedRegex("[Ii]mmutable")]
    private static partial Regex Immutable();

    [GeneratedRegex(@"\s+")]
    private static partial Regex Space();
}
