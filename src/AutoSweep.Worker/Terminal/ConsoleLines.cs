using System.Globalization;
using Spectre.Console;

namespace AutoSweep.Worker.Terminal;

/// <summary>Lines typed at the console.</summary>
public static class ConsoleLines
{
    /// <summary>Asks and waits for the line.</summary>
    /// <param name="question">What is asked.</param>
    /// <param name="cancellationToken">Ends the wait.</param>
    /// <returns>Null at the end of the input.</returns>
    public static async Task<string?> AskAsync(string question, CancellationToken cancellationToken)
    {
        AnsiConsole.MarkupInterpolated(CultureInfo.InvariantCulture, $"{question} ");
        // The console's own reader blocks whatever the token says; the wait for it does not.
        return await Task.Run(Console.In.ReadLine, CancellationToken.None).WaitAsync(cancellationToken);
    }
}
