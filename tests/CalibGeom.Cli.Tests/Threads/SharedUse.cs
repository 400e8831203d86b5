using System.Collections;
using System.Globalization;

namespace CalibGeom.Cli.Tests.Threads;

/// <summary>
/// How an object that says it may be shared is used: made anew, then asked for all its public properties and for what
/// its methods give, which must come out alike however many ask at once.
/// </summary>
internal sealed record SharedUse(Type Type, Func<object> Make, Func<object, IEnumerable<object?>> Ask)
{
    internal static SharedUse Of<T>(Func<T> make, Func<T, IEnumerable<object?>> ask)
        where T : class => new(typeof(T), make, shared => ask((T)shared));

    /// <summary>Of a type that holds nothing but what it gives.</summary>
    internal static SharedUse Of(Type type, Func<IEnumerable<object?>> ask) => new(type, () => type, _ => ask());

    /// <summary>All that it says of itself.</summary>
    internal string Told(object shared)
    {
        IEnumerable<object?> properties = (shared is Type ? [] : shared.GetType().GetProperties())
            .Where(p => p.GetIndexParameters().Length == 0 && !p.PropertyType.IsByRefLike && p.GetMethod!.IsPublic)
            .Where(p => !p.GetMethod!.IsStatic)
            .Select(p => p.GetValue(shared));
        return string.Join("; ", properties.Concat(Ask(shared)).Select(Text));
    }

    private static string Text(object? value) =>
        value switch
        {
            null => "-",
            string text => text,
            double number => number.ToString("R", CultureInfo.InvariantCulture),
            IEnumerable list => $"[{string.Join(",", list.Cast<object?>().Select(Text))}]",
            _ => Convert.ToString(value, CultureInfo.InvariantCulture) ?? "",
        };
}
