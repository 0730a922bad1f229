using PlantWatch.Server.Commands.Backups;
using PlantWatch.Server.Commands.Pumps;
using PlantWatch.Server.Commands.Rebuild;
using PlantWatch.Server.Commands.Replay;
using PlantWatch.Server.Commands.Replay.Store;

namespace PlantWatch.Server.Commands;

/// <summary>What can be asked of the program instead of starting the server. Each command answers with 0 when all went well, 1 when something in the input was bad, 2 when it was asked wrongly.</summary>
internal static class CommandLine
{
    private const string Usage = """
        PlantWatch.Server                            starts the server
        PlantWatch.Server check-plant PLANT.yaml     checks a plant file
        PlantWatch.Server check-board [--plant PLANT.yaml] BOARD.board.yaml ...
            checks boards; with a plant file also that it has what they name
        PlantWatch.Server add-device NAME --topics FILTER ... [--file devices.yaml]
            lets a device in at the embedded broker and shows its password, this once
        PlantWatch.Server balance IN.csv --out OUT.csv
            columns id, pH, T_C, TA_mgL_CaCO3, CH_mgL_CaCO3, TDS_mgL; adds the saturation indices
        PlantWatch.Server dose IN.csv --out OUT.csv
            columns id, pH0, T_C, TA0_mgL_CaCO3, CH_mgL_CaCO3, TDS_mgL, reagent, dose_mmol_per_kgw; adds the water after the dose
        PlantWatch.Server replay FOLDER --out FOLDER2
            puts the recorded plant of FOLDER/input through the fold; writes verdicts.csv and doubted.csv
        PlantWatch.Server replay --from T --to T [--data FOLDER] [--plant PLANT.yaml] --out FOLDER2
            puts the plant's own record through the fold again, under today's rules or another plant file, and writes
            comparison.csv: what would have been said against what was said; the record is only read; ten years at most
        PlantWatch.Server replay-pumps FOLDER --out FOLDER2
            puts the recorded dosing of FOLDER/input through the supervision of pumps; writes pump_verdicts.csv and pump_evidence.csv
        PlantWatch.Server rebuild-series [--anew] [--data FOLDER]
            writes every reading of the record to InfluxDB again, with the settings of the server, which may be running;
            goes on with one that was broken off, unless --anew
        PlantWatch.Server backup [--data FOLDER] --out FOLDER2
            makes a backup of the record while the server runs; verify-backup proves one, restore puts it into an empty folder:
        PlantWatch.Server verify-backup BACKUP
        PlantWatch.Server restore BACKUP --data FOLDER
        """;

    /// <summary>Runs a command; null when none is asked for, so that the server starts.</summary>
    public static int? Run(string[] args, TextWriter output, TextWriter complaints)
    {
        if (args is [] || args[0].StartsWith('-') && args is not (["--help"] or ["-h"])) return null;
        switch (args)
        {
            case ["check-plant", var path]: return CheckPlantCommand.Run(path, output);
            case ["check-board", "--plant", var plant, _, ..]: return CheckBoardCommand.Run(args[3..], plant, output);
            case ["check-board", var first, ..] when first != "--plant": return CheckBoardCommand.Run(args[1..], null, output);
            case ["add-device", var name, "--topics", _, .., "--file", var file] when args.Length > 5: return AddDeviceCommand.Run(name, args[3..^2], file, output, complaints);
            case ["add-device", var name, "--topics", _, ..] when !args.Contains("--file"): return AddDeviceCommand.Run(name, args[3..], "devices.yaml", output, complaints);
            case ["balance", var from, "--out", var to]: return CsvTable.Run(from, to, BalanceTable.Columns, BalanceTable.Row, output, complaints);
            case ["dose", var from, "--out", var to]: return CsvTable.Run(from, to, DoseTable.Columns, DoseTable.Row, output, complaints);
            case ["replay", var from, "--out", var to]: return ReplayCommand.Run(from, to, output, complaints);
            case ["replay-pumps", var from, "--out", var to]: return PumpReplayCommand.Run(from, to, output, complaints);
            case ["replay", .. var words] when StoreReplayRequest.Of(words) is { } asked: return StoreReplayCommand.Run(asked, output, complaints);
            case ["backup", "--out", var into]: return BackupCommands.Make(new PlantWatchOptions().Data, into, output, complaints);
            case ["backup", "--data", var data, "--out", var into]: return BackupCommands.Make(data, into, output, complaints);
            case ["verify-backup", var path]: return BackupCommands.Verify(path, output, complaints);
            case ["restore", var path, "--data", var data]: return BackupCommands.Restore(path, data, output, complaints);
            case ["rebuild-series", .. var words] when RebuildRequest.Of(words) is { } asked: return RebuildSeriesCommand.Run(asked, Settings.Of(Settings.Read([])), output, complaints);
            default:
                (args is ["--help"] or ["-h"] or ["help"] ? output : complaints).WriteLine(Usage);
                return args is ["--help"] or ["-h"] or ["help"] ? 0 : 2;
        }
    }
}
