namespace AutoSweep.Sim.Scpi;

/// <summary>What an instrument understands: every written form of its headers, with what each does.</summary>
internal sealed class CommandTable
{
    private readonly Dictionary<string, Handler> commands = new(StringComparer.Ordinal);

    /// <summary>Carries out one message unit.</summary>
    /// <param name="arguments">Its parameters.</param>
    /// <param name="interrupted">Cancelled when another message comes before the answer is out.</param>
    /// <returns>The answer of a query; null of a command.</returns>
    public delegate ValueTask<string?> Handler(Arguments arguments, CancellationToken interrupted);

    /// <summary>A command or, with a <c>?</c> at the pattern's end, a query.</summary>
    public CommandTable Add(string pattern, Handler handler)
    {
        var query = pattern.EndsWith('?');
        foreach (var form in HeaderForms.Of(pattern.TrimEnd('?')))
            commands.Add(query ? form + "?" : form, handler);
        return this;
    }

    public CommandTable Command(string pattern, Action<Arguments> action) => Add(pattern, (arguments, _) =>
    {
        action(arguments);
        return new((string?)null);
    });

    public CommandTable Query(string pattern, Func<Arguments, string> answer) =>
        Add(pattern, (arguments, _) => new(answer(arguments)));

    public Handler? Find(string header) => commands.GetValueOrDefault(header);
}
