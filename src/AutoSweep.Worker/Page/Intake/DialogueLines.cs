using System.Globalization;
using System.Text;
using AutoSweep.Worker.Page.Work;

namespace AutoSweep.Worker.Page.Intake;

/// <summary>What parts' work writes, as lines that the page shows.</summary>
/// <param name="dialogue">Where they are told.</param>
internal sealed class DialogueLines(PageDialogue dialogue) : TextWriter(CultureInfo.InvariantCulture)
{
    /// <inheritdoc/>
    public override Encoding Encoding => Encoding.UTF8;

    /// <inheritdoc/>
    public override void WriteLine(string? value) => dialogue.Tell(value ?? "");

    /// <inheritdoc/>
    public override Task WriteLineAsync(string? value)
    {
        WriteLine(value);
        return Task.CompletedTask;
    }
}
