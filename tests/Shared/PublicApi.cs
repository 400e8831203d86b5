using System.Reflection;

namespace CalibGeom.Tests.Shared;

/// <summary>Locks an assembly's public surface in a text file, so that every change of it is seen in review.</summary>
internal static class PublicApi
{
    private const BindingFlags Declared =
        BindingFlags.Public
        | BindingFlags.NonPublic
        | BindingFlags.Instance
        | BindingFlags.Static
        | BindingFlags.DeclaredOnly;

    /// <summary>Compares the surface with a file, or rewrites the file when CALIBGEOM_UPDATE is 1.</summary>
    internal static void RequireUnchanged(Assembly assembly, string file)
    {
        string path = Path.Combine(Repository.Root, file);
        string actual = string.Concat(Lines(assembly).Select(l => l + "\n"));
        if (Repository.Updating)
            File.WriteAllText(path, actual);
        Assert.True(
            File.Exists(path),
            $"{file} is missing; run the tests with CALIBGEOM_UPDATE=1 and review what is written."
        );
        Assert.Equal(File.ReadAllText(path).ReplaceLineEndings("\n"), actual);
    }

    private static IEnumerable<string> Lines(Assembly assembly) =>
        assembly.GetExportedTypes().OrderBy(t => t.FullName, StringComparer.Ordinal).SelectMany(Describe);

    private static IEnumerable<string> Describe(Type type)
    {
        yield return $"{Kind(type)} {Name(type)}{Bases(type)}";
        foreach (
            string member in type.GetMembers(Declared).Where(IsVisible).Select(Describe).Order(StringComparer.Ordinal)
        )
            yield return "    " + member;
    }

    private static bool IsVisible(MemberInfo member) =>
        member switch
        {
            MethodInfo m => Reaches(m)
                && (!m.IsSpecialName || m.Name.StartsWith("op_", StringComparison.Ordinal))
                && !m.Name.StartsWith('<'),
            ConstructorInfo c => Reaches(c),
            FieldInfo f => f.IsPublic && f.Name != "value__",
            PropertyInfo p => p.GetAccessors(true).Any(Reaches),
            EventInfo => true,
            _ => false,
        };

    private static bool Reaches(MethodBase method) => method.IsPublic || method.IsFamily || method.IsFamilyOrAssembly;

    private static string Describe(MemberInfo member) =>
        member switch
        {
            MethodInfo m => $"{(m.IsStatic ? "static " : "")}{m.Name}({Parameters(m)}) : {Name(m.ReturnType)}",
            ConstructorInfo c => $"new({Parameters(c)})",
            FieldInfo f => f.IsLiteral && f.DeclaringType!.IsEnum
                ? f.Name
                : $"{(f.IsLiteral ? "const" : "field")} {f.Name} : {Name(f.FieldType)}",
            PropertyInfo p => $"{p.Name} : {Name(p.PropertyType)} "
                + $"{{{string.Concat(p.GetAccessors(true).Where(Reaches).Select(Accessor).Order(StringComparer.Ordinal))} }}",
            _ => member.ToString()!,
        };

    private static string Accessor(MethodInfo m) =>
        m.ReturnParameter.GetRequiredCustomModifiers().Any(t => t.Name == "IsExternalInit") ? " init"
        : m.ReturnType == typeof(void) ? " set"
        : " get";

    private static string Parameters(MethodBase method) =>
        string.Join(
            ", ",
            method
                .GetParameters()
                .Select(p =>
                    $"{Name(p.ParameterType)} "
                    + $"{p.Name}{(p.IsOptional ? " = " + Convert.ToString(p.RawDefaultValue ?? "null", System.Globalization.CultureInfo.InvariantCulture) : "")}"
                )
        );

    private static string Kind(Type type) =>
        type.IsEnum ? "enum"
        : type.IsInterface ? "interface"
        : type.IsValueType ? "struct"
        : type is { IsAbstract: true, IsSealed: true } ? "static class"
        : type.IsAbstract ? "abstract class"
        : type.IsSealed ? "sealed class"
        : "class";

    private static string Bases(Type type) =>
        type.BaseType is { } b && b != typeof(object) && b != typeof(ValueType) && b != typeof(Enum)
            ? $" : {Name(b)}"
            : "";

    private static string Name(Type type)
    {
        if (type.IsArray)
            return Name(type.GetElementType()!) + "[]";
        if (type.IsByRef)
            return "ref " + Name(type.GetElementType()!);
        if (type.IsGenericParameter)
            return type.Name;
        string name =
            type.Namespace is { } n && n.StartsWith("System", StringComparison.Ordinal)
                ? type.Name
                : type.FullName ?? type.Name;
        if (!type.IsGenericType)
            return name;
        return name.Split('`')[0] + "<" + string.Join(", ", type.GetGenericArguments().Select(Name)) + ">";
    }
}
