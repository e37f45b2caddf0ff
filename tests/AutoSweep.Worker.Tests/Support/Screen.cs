using Spectre.Console;
using Spectre.Console.Rendering;

namespace AutoSweep.Worker.Tests.Support;

/// <summary>A terminal of 120 columns and 40 rows that keeps what is written on it.</summary>
internal sealed class Screen
{
    private readonly StringWriter _text = new();

    public Screen(bool ansi = false)
    {
        Console = AnsiConsole.Create(new()
        {
            Out = new AnsiConsoleOutput(_text),
            Ansi = ansi ? AnsiSupport.Yes : AnsiSupport.No,
            ColorSystem = ansi ? ColorSystemSupport.TrueColor : ColorSystemSupport.NoColors,
        });
        (Console.Profile.Width, Console.Profile.Height) = (120, 40);
    }

    public IAnsiConsole Console { get; }

    public string Text => _text.ToString();

    /// <summary>What was written, line by line, without blanks at the ends.</summary>
    public string[] Lines => [.. Text.TrimEnd().Split('\n').Select(line => line.TrimEnd())];

    public static string[] LinesOf(IRenderable picture)
    {
        var screen = new Screen();
        screen.Console.Write(picture);
        return screen.Lines;
    }
}
