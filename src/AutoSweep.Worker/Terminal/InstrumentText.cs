using AutoSweep.Instruments.Discovery;

namespace AutoSweep.Worker.Terminal;

/// <summary>The list of instruments as text: a resource name alone on its line, so that it can be copied, and indented below it what is
/// known.</summary>
internal static class InstrumentText
{
    private const string Indent = "    ";

    public static async Task WriteAsync(TextWriter to, FoundResource resource)
    {
        await to.WriteLineAsync(resource.Resource);
        if (resource.Description.Length > 0)
            await to.WriteLineAsync(Indent + resource.Description);
        await to.FlushAsync();
    }

    public static async Task WriteAsync(TextWriter to, InquiryResult answer)
    {
        if (answer.Identity is not { } identity)
        {
            await to.WriteLineAsync($"{Indent}{answer.Trouble}");
            return;
        }

        await to.WriteLineAsync($"{Indent}answers {identity}{(answer.Line.Length > 0 ? $" (at {answer.Line})" : "")}");
        await to.WriteLineAsync(Indent + (answer.Drivers.Count > 0
            ? $"driver: {string.Join(" or ", answer.Drivers)}"
            : "no meter driver fits it; if it is the relay fixture it needs none, else try scpi-dmm"));
    }

    public static async Task WriteEndAsync(TextWriter to, FoundResources found, bool asked)
    {
        if (found.Resources.Count == 0)
            await to.WriteLineAsync("No USB instrument and no serial port on this computer.");
        foreach (var note in found.Notes)
            await to.WriteLineAsync(note);
        if (!asked)
            await to.WriteLineAsync("Nothing was sent to any of them. --ask sends *IDN? and shows who answers; a LAN socket has to be named.");
    }
}
