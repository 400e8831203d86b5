namespace CalibGeom.Features;

/// <summary>
/// Input that cannot be used: a file that is truncated, a spec with an unknown name, a reading that is no number. The
/// message says what,
/// where, the limit and what to do; the command line prints it and exits with 2.
/// </summary>
public class InputException : Exception
{
    /// <summary>An input error.</summary>
    /// <param name="message">What is wrong, where, the limit, and what to do.</param>
    public InputException(string message)
        : base(message) { }

    /// <summary>An input error with its cause.</summary>
    /// <param name="message">What is wrong, where, the limit, and what to do.</param>
    /// <param name="inner">The cause.</param>
    public InputException(string message, Exception inner)
        : base(message, inner) { }
}
