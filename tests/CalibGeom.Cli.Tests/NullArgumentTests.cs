using System.Reflection;
using System.Runtime.CompilerServices;

namespace CalibGeom.Cli.Tests;

/// <summary>
/// What a public call needs and is not given is refused as an argument that is null, never met as a fault of our own.
/// Which argument it names is not asked: others are stand-ins, and may be refused first.
/// </summary>
public class NullArgumentTests
{
    [Fact]
    public void WhatIsNeededIsRefusedWhenItIsMissing()
    {
        var wrong = new List<string>();
        int asked = 0;
        foreach (MethodBase call in PublicLibraries.All.SelectMany(a => a.GetExportedTypes()).SelectMany(Calls))
        foreach (ParameterInfo missing in call.GetParameters().Where(IsNeeded))
        {
            asked++;
            if (!Refuses(call, missing, out string said))
                wrong.Add($"{call.DeclaringType!.Name}.{call.Name}({missing.Name}): {said}");
        }
        Assert.True(wrong.Count == 0, string.Join('\n', wrong));
        Assert.True(asked > 300, $"{asked}");
    }

    // Records are what they are given; comparing and what a stream overrides is asked by the framework's own rules.
    private static IEnumerable<MethodBase> Calls(Type type)
    {
        if (type.IsGenericTypeDefinition || type.IsSubclassOf(typeof(Delegate)))
            return [];
        const BindingFlags Own = BindingFlags.Public | BindingFlags.DeclaredOnly;
        IEnumerable<MethodBase> all = type.GetMethods(Own | BindingFlags.Static | BindingFlags.Instance)
            .Where(m =>
                m is { IsGenericMethodDefinition: false, IsSpecialName: false, IsAbstract: false }
                && m.GetBaseDefinition() == m
                && m.Name is not ("Equals" or "CompareTo")
                && (m.IsStatic || !type.IsAbstract)
            );
        if (!type.IsAbstract && !type.IsValueType && type.GetMethod("<Clone>$") is null)
            all = all.Concat(type.GetConstructors(Own | BindingFlags.Instance));
        return all.Where(c => !c.GetParameters().Any(p => p.ParameterType.IsByRefLike || p.ParameterType.IsByRef));
    }

    // An empty text is as little a name as none: only what has members is asked.
    private static bool IsNeeded(ParameterInfo p) =>
        p is { ParameterType: { IsValueType: false } type, HasDefaultValue: false }
        && type != typeof(string)
        && new NullabilityInfoContext().Create(p).WriteState == NullabilityState.NotNull;

    private static bool Refuses(MethodBase call, ParameterInfo missing, out string said)
    {
        object?[] arguments = [.. call.GetParameters().Select(p => p == missing ? null : Stand(p.ParameterType))];
        try
        {
            object? made = call is ConstructorInfo maker
                ? maker.Invoke(arguments)
                : call.Invoke(call.IsStatic ? null : Stand(call.DeclaringType!), arguments);
            (made as Task)?.GetAwaiter().GetResult();
            said = "taken";
            return false;
        }
        catch (Exception e)
        {
            Exception why = (e as TargetInvocationException)?.InnerException ?? e;
            said = $"{why.GetType().Name} {why.Message}";
            return why is ArgumentNullException;
        }
    }

    // Stands for something that is there; what is missing is refused before anything else is looked at.
    private static object? Stand(Type type) =>
        type == typeof(string) ? "x"
        : type.IsValueType ? Activator.CreateInstance(type)
        : type.IsArray ? Array.CreateInstance(type.GetElementType()!, new int[type.GetArrayRank()])
        : type == typeof(Stream) ? new MemoryStream()
        : type.IsInterface && type.IsGenericType && type.IsAssignableFrom(type.GenericTypeArguments[0].MakeArrayType())
            ? Array.CreateInstance(type.GenericTypeArguments[0], 0)
        : type.IsAbstract || type.IsSubclassOf(typeof(Delegate)) ? null
        : RuntimeHelpers.GetUninitializedObject(type);
}
