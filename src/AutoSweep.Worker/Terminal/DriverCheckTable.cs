using AutoSweep.Instruments.Meters.Kit;
using Spectre.Console;

namespace AutoSweep.Worker.Terminal;

/// <summary>What the checks of a driver found.</summary>
internal static class DriverCheckTable
{
    /// <summary>The check without hardware: a line a part, then every fault.</summary>
    public static void Write(IAnsiConsole console, IReadOnlyList<DriverCheckItem> items)
    {
        foreach (var item in items)
            console.MarkupLineInterpolated($"{(item.Faults.Count == 0 ? "ok" : "FAULT"),-6}{item.Name,-14}{item.Says}");
        foreach (var fault in items.SelectMany(item => item.Faults))
        {
            console.WriteLine();
            console.MarkupLineInterpolated($"[bold red]Found:[/]      {fault.Found}");
            console.MarkupLineInterpolated($"[bold]Expected:[/]   {fault.Expected}");
            console.MarkupLineInterpolated($"[bold green]What to do:[/] {fault.WhatToDo}");
        }
    }

    /// <summary>The check with a meter that is there.</summary>
    public static void Write(IAnsiConsole console, string title, IReadOnlyList<LiveCheckRow> rows)
    {
        var table = new Table().Border(TableBorder.Rounded).Title(Markup.Escape(title)).AddColumns("what", "found", "expected", "", "reason");
        foreach (var row in rows)
            table.AddRow(Markup.Escape(row.What), Markup.Escape(row.Found), Markup.Escape(row.Expected), Verdict(row.Verdict), Markup.Escape(row.Reason));
        console.Write(table);
    }

    private static string Verdict(LiveVerdict verdict) => verdict switch
    {
        LiveVerdict.Ok => "ok",
        LiveVerdict.Short => "[bold red]short[/]",
        _ => "-",
    };
}
