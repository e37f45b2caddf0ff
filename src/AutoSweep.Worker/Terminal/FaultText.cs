using AutoSweep.Core;
using Spectre.Console;

namespace AutoSweep.Worker.Terminal;

/// <summary>A fault as the person at the bench reads it.</summary>
public static class FaultText
{
    /// <summary>Writes found, expected and what to do, each on lines of its own.</summary>
    public static void Write(IAnsiConsole console, Exception fault)
    {
        if (fault is not BenchFaultException known)
        {
            console.MarkupLineInterpolated($"[bold red]A fault that nobody foresaw:[/] {fault.Message}");
            console.WriteLine("Everything recorded so far is kept. Go on with --resume; the log in the job folder says more.");
            return;
        }

        console.MarkupLineInterpolated($"[bold red]Found:[/]      {known.Found}");
        console.MarkupLineInterpolated($"[bold]Expected:[/]   {known.Expected}");
        console.MarkupLineInterpolated($"[bold green]What to do:[/] {known.WhatToDo}{(known.AtTerminal is { } typed ? $" ({typed})" : "")}");
    }
}
