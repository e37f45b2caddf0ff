using Spectre.Console;
using Spectre.Console.Rendering;

namespace AutoSweep.Worker.Terminal;

/// <summary>A framed grid of signs, each with its colour, and what its axes mean.</summary>
/// <param name="title">What the top of the frame says: what is drawn, and how much its height stands for.</param>
public sealed class PlotBox(string title)
{
    /// <summary>Columns inside the frame.</summary>
    public const int Columns = 48;

    /// <summary>Rows inside the frame.</summary>
    public const int Rows = 10;

    private readonly string[,] _cells = new string[Rows, Columns];

    /// <summary>Puts a sign into the grid; outside it, nothing happens.</summary>
    /// <param name="column">From 0 at the left.</param>
    /// <param name="row">From 0 at the bottom.</param>
    /// <param name="sign">The sign.</param>
    /// <param name="colour">A colour in Spectre's markup.</param>
    public void Put(int column, int row, char sign, string colour)
    {
        if (column is >= 0 and < Columns && row is >= 0 and < Rows)
            _cells[Rows - 1 - row, column] = $"[{colour}]{sign}[/]";
    }

    /// <summary>The frame with the grid in it and a line of text under it.</summary>
    /// <param name="left">What the left end stands for.</param>
    /// <param name="right">What the right end stands for.</param>
    public IRenderable Draw(string left, string right) => new Rows(
        new Panel(new Markup(string.Join('\n', Enumerable.Range(0, Rows).Select(Line))))
        {
            Border = BoxBorder.Square,
            BorderStyle = new Style(Color.Grey),
            Padding = new Padding(0),
            Header = new PanelHeader(Markup.Escape($" {title} ")),
        },
        new Text(" " + left.PadRight(Columns - right.Length) + right, new Style(Color.Grey)));

    private string Line(int row) => string.Concat(Enumerable.Range(0, Columns).Select(column => _cells[row, column] ?? " "));
}
