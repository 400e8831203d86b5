namespace CalibGeom.Features;

/// <summary>
/// Input that cannot be used: a file that is truncated, a spec with an unknown name, a reading that is no number. The
/// message says what, where, the limit and what to do; the command line prints it and exits with 2.
/// </summary>
public class InputException : Exception
{
    /// <summary>An input error.</summary>
    /// <param name="id">What kind of input it is: one of <see cref="InputIds"/>, or a word of your own.</param>
    /// <param name="message">What is wrong, where, the limit, and what to do.</param>
    /// <param name="inner">The cause, or null.</param>
    public InputException(string id, string message, Exception? inner = null)
        : base(message, inner) => (Id, Sentence, Problems) = (id, message, [message]);

    /// <summary>Several faults of one input; the message holds a line for each.</summary>
    /// <param name="id">What kind of input it is: one of <see cref="InputIds"/>, or a word of your own.</param>
    /// <param name="problems">What is wrong, where, the limit, and what to do, each time; at least one.</param>
    public InputException(string id, IReadOnlyList<string> problems)
        : this(id, string.Join('\n', Require.Given(problems, nameof(problems)))) => Problems = problems;

    /// <summary>An input error at a place; the message is the place, a colon and the sentence.</summary>
    /// <param name="id">What kind of input it is: one of <see cref="InputIds"/>, or a word of your own.</param>
    /// <param name="sentence">What is wrong, the limit, and what to do.</param>
    /// <param name="place">Where.</param>
    /// <param name="inner">The cause, or null.</param>
    public InputException(string id, string sentence, InputPlace place, Exception? inner = null)
        : base(Together(sentence, place), inner) => (Id, Sentence, Place, Problems) = (id, sentence, place, [Message]);

    /// <summary>An input error of no kind that is named in <see cref="InputIds"/>.</summary>
    /// <param name="message">What is wrong, where, the limit, and what to do.</param>
    public InputException(string message)
        : this(InputIds.Other, message) { }

    /// <summary>
    /// What kind of input cannot be used, which a program may act on: one of <see cref="InputIds"/>, or a word of who
    /// threw it.
    /// </summary>
    public string Id { get; }

    /// <summary>What is wrong, without the place.</summary>
    public string Sentence { get; }

    /// <summary>The lines of the message, one a fault: what else ends a line in it comes from the input.</summary>
    public IReadOnlyList<string> Problems { get; }

    /// <summary>Where, as far as it is known apart from the message.</summary>
    public InputPlace Place { get; } = InputPlace.Unknown;

    /// <summary>The same error, said of a file: <c>spec.json:2:5: $.nest: ...</c>.</summary>
    /// <param name="file">The file's name.</param>
    public InputException In(string file) => new(Id, Sentence, Place with { File = file }, this);

    /// <summary>
    /// An input error that a refused argument caused: its sentence, without the parameter's name, which means nothing
    /// to who wrote the input.
    /// </summary>
    /// <param name="id">What kind of input it is: one of <see cref="InputIds"/>.</param>
    /// <param name="cause">The refusal.</param>
    /// <param name="before">What stands before the sentence, such as <c>instrument cal: </c>.</param>
    public static InputException Because(string id, ArgumentException cause, string before = "") =>
        new(id, before + SentenceOf(cause), cause);

    private static string SentenceOf(ArgumentException cause)
    {
        ArgumentNullException.ThrowIfNull(cause);
        // The runtime appends the parameter, and for a range the value on a line of its own.
        int end = cause.ParamName is { Length: > 0 } name
            ? cause.Message.IndexOf($" (Parameter '{name}')", StringComparison.Ordinal)
            : -1;
        return end < 0 ? cause.Message : cause.Message[..end];
    }

    private static string Together(string sentence, InputPlace place)
    {
        ArgumentNullException.ThrowIfNull(place);
        string where = place.ToString();
        return where.Length == 0 ? sentence : $"{where}: {sentence}";
    }
}
