package parchment.display;

import java.text.Bidi;
import java.util.regex.Pattern;
import parchment.display.answer.WholeNames;

/**
 * Writes a table as HTML: semantic, whole without a script; colours come from the page, so that it suits a light and a dark one. A
 * table too long to take in at a glance brings a small script of its own, by which it sorts, pages and is searched
 * (docs/decisions/0006); nothing is loaded.
 */
final class TableHtml {
    /** Rows beyond this many are counted, not written: a page with a hundred thousand rows would stop the browser. */
    static final int ROWS_WRITTEN = 1000;

    /** Tables longer than this are worth sorting. */
    static final int ROWS_AT_A_GLANCE = 8;

    // The class is doubled so that the rules win over a notebook's own rules for tables, wherever the page puts them.
    private static final String STYLE = """
            <style>
            .parchment-table.parchment-table{overflow-x:auto;margin:.5em 0}
            .parchment-table.parchment-table::-webkit-scrollbar{height:.6em;background:rgba(128,128,128,.2)}
            .parchment-table.parchment-table::-webkit-scrollbar-thumb{background:rgba(128,128,128,.8);border-radius:.3em}
            .parchment-table.parchment-table table{border-collapse:collapse;color:inherit;background:none;border:0;\
            margin:0;width:auto;font-variant-numeric:tabular-nums}
            .parchment-table.parchment-table caption{caption-side:top;text-align:left;font-weight:bold;color:inherit;padding:.2em 0;\
            min-width:min(26em,80vw)}
            .parchment-table.parchment-table th,.parchment-table.parchment-table td{text-align:left;vertical-align:top;\
            padding:.15em .8em .15em 0;border:0;border-bottom:1px solid rgba(128,128,128,.4);white-space:nowrap}
            .parchment-table.parchment-table thead th,.parchment-table.parchment-table .sentence{max-width:28em;white-space:normal;\
            overflow-wrap:break-word}
            .parchment-table.parchment-table thead th{vertical-align:bottom}
            .parchment-table.parchment-table .sentence{min-width:10em}
            .parchment-table.parchment-table tbody th{font-weight:normal}
            .parchment-table.parchment-table .number{text-align:right;padding-left:.8em}
            .parchment-table.parchment-table .number:first-child{padding-left:0}
            .parchment-table.parchment-table .unit{font-weight:normal;white-space:nowrap}
            .parchment-table.parchment-table .whole{white-space:nowrap}
            .parchment-table.parchment-table .missing{opacity:.75;font-style:italic}
            .parchment-table.parchment-table p{margin:.3em 0}
            .parchment-table.parchment-table summary{cursor:pointer;padding:.2em 0}
            .parchment-table.parchment-table .tools{display:flex;flex-wrap:wrap;gap:.3em 1.4em;align-items:baseline;margin:.2em 0;\
            position:sticky;left:0;font-size:.9em}
            .parchment-table.parchment-table .tools p{margin:0}
            .parchment-table.parchment-table button{font:inherit;color:inherit;background:none;cursor:pointer}
            .parchment-table.parchment-table th button{border:0;padding:0;margin:0;font-weight:inherit;text-align:inherit;\
            text-decoration:underline dotted 1px;text-underline-offset:.25em}
            .parchment-table.parchment-table th[aria-sort] button{text-decoration:underline solid 2px}
            .parchment-table.parchment-table th[aria-sort=ascending] button::after{content:" \\2191"}
            .parchment-table.parchment-table th[aria-sort=descending] button::after{content:" \\2193"}
            .parchment-table.parchment-table .tools button{border:1px solid rgba(128,128,128,.7);border-radius:.3em;\
            padding:.05em .6em;margin:0 .15em}
            .parchment-table.parchment-table .tools button[aria-pressed=true]{border:2px solid currentColor;font-weight:bold}
            .parchment-table.parchment-table .tools button:disabled{opacity:.5;cursor:default}
            .parchment-table.parchment-table .tools input{font:inherit;color:inherit;background:none;width:auto;margin:0;\
            border:1px solid rgba(128,128,128,.7);border-radius:.3em;padding:.05em .4em}
            .parchment-table.parchment-table .tools label{font-weight:normal;margin:0}
            .parchment-table.parchment-table tr[hidden]{display:none}
            .parchment-table.parchment-table.moved tbody th,.parchment-table.parchment-table.moved thead th.names{position:sticky;left:0;\
            background:var(--ground)}
            @media print{.parchment-table.parchment-table .tools>:not(p){display:none}\
            .parchment-table.parchment-table{overflow:visible}.parchment-table.parchment-table .sentence{min-width:8em}\
            .parchment-table.parchment-table caption{min-width:min(26em,100%)}\
            .parchment-table.parchment-table th button{display:inline;text-decoration:none}}
            @media (max-width:1100px){.parchment-table.parchment-table table{font-size:max(.9em,12px)}}
            @media (max-width:900px),print{.parchment-table.parchment-table table{font-size:max(.8em,12px)}\
            .parchment-table.parchment-table caption{font-size:max(1em,13px)}\
            .parchment-table.parchment-table th,.parchment-table.parchment-table td{padding-right:.7em}\
            .parchment-table.parchment-table .number{padding-left:.35em;padding-right:.7em}}
            @media print{.parchment-table.parchment-table table{font-size:8pt}\
            .parchment-table.parchment-table th,.parchment-table.parchment-table td{padding-right:.5em}\
            .parchment-table.parchment-table caption{font-size:9pt}}
            </style>
            """;

    /** Names, dates and verdicts are no longer than this and stand on one line; what is longer is sentences. */
    private static final int LONGEST_NAME = 24;

    /** An estimate with its interval stands on one line too, though it is longer than a name. */
    private static final Pattern ESTIMATE = Pattern.compile("[-+\u2212]?\\d[\\d.,]*[^()]{0,14} \\([^()]{1,24}\\)");

    /** A heading no longer than this is not broken between its words. */
    private static final int SHORT_HEADING = 10;

    private TableHtml() {}

    static String of(Table table) {
        int shown = Math.min(table.rowsShown(), table.rowCount());
        boolean lively = table.rowCount() > ROWS_AT_A_GLANCE;
        String title = Html.escape(table.title().isBlank() ? "Table" : table.title());
        StringBuilder html = new StringBuilder("<div class=\"parchment-table\"")
                .append(lively ? " data-lively=\"\" data-page=\"" + table.rowsShown() + "\"" : "")
                // In a narrow window any table can be moved sideways, so the keyboard must reach it; long ones are
                // landmarks as well.
                .append(" tabindex=\"0\" role=\"")
                .append(lively ? "region" : "group")
                .append("\" aria-label=\"")
                .append(title)
                .append("\">")
                .append(STYLE);
        html.append("<table><caption>").append(Html.escape(table.title())).append("</caption>");
        rows(table, 0, shown, html);
        html.append("</table>");
        int written = Math.min(table.rowCount(), Math.max(shown, ROWS_WRITTEN));
        if (shown < written) {
            html.append("<details><summary>")
                    .append(written - shown)
                    .append(written - shown == 1 ? " more row" : " more rows")
                    .append("</summary><table>");
            rows(table, shown, written, html);
            html.append("</table></details>");
        }
        if (written < table.rowCount()) {
            html.append("<p>").append(table.rowCount() - written).append(" rows beyond these are not shown here.</p>");
        }
        if (table.rowCount() == 0) {
            html.append("<p>No rows.</p>");
        }
        for (String note : table.notes()) {
            html.append("<p><small>").append(Html.escape(note)).append("</small></p>");
        }
        html.append(lively ? TableScript.TAG : "");
        return html.append("</div>").toString();
    }

    private static void rows(Table table, int from, int to, StringBuilder html) {
        html.append("<thead><tr>");
        for (Column column : table.columns()) {
            boolean namesRows = column == table.columns().get(0) && column.setting() == Column.Setting.TEXT;
            html.append("<th scope=\"col\"")
                    .append(namesRows ? " class=\"names\"" : numberClass(column, false))
                    .append(column.heading().length() > SHORT_HEADING ? ">" : "><span class=\"whole\">")
                    .append(Html.escape(column.heading()))
                    .append(column.heading().length() > SHORT_HEADING ? "" : "</span>");
            if (!column.unit().isEmpty()) {
                html.append(" <span class=\"unit\">[")
                        .append(Html.escape(column.unit()))
                        .append("]</span>");
            }
            html.append("</th>");
        }
        html.append("</tr></thead><tbody>");
        for (int r = from; r < to; r++) {
            html.append("<tr>");
            for (int c = 0; c < table.columns().size(); c++) {
                cell(table, r, c, html);
            }
            html.append("</tr>\n");
        }
        html.append("</tbody>");
    }

    private static void cell(Table table, int row, int c, StringBuilder html) {
        Column column = table.columns().get(c);
        boolean namesRow = c == 0 && column.setting() == Column.Setting.TEXT;
        String text = table.cell(row, c);
        html.append(namesRow ? "<th scope=\"row\"" : "<td").append(classes(column, column.isMissing(row), text));
        String key = column.sortKey(row);
        html.append(key.isEmpty() ? "" : " data-key=\"" + key + "\"");
        // A name written from right to left would otherwise pull the brackets and digits beside it out of order.
        html.append(Bidi.requiresBidi(text.toCharArray(), 0, text.length()) ? " dir=\"auto\">" : ">");
        html.append(isLong(text) ? WholeNames.inTable(text) : Html.escape(text)).append(namesRow ? "</th>" : "</td>");
    }

    private static boolean isLong(String text) {
        return text.codePointCount(0, text.length()) > LONGEST_NAME
                && !ESTIMATE.matcher(text).matches();
    }

    private static String classes(Column column, boolean missing, String text) {
        return column.setting() == Column.Setting.TEXT && isLong(text)
                ? " class=\"sentence\""
                : numberClass(column, missing);
    }

    private static String numberClass(Column column, boolean missing) {
        String classes = (column.setting() == Column.Setting.NUMBER ? "number" : "") + (missing ? " missing" : "");
        return classes.isEmpty() ? "" : " class=\"" + classes.strip() + "\"";
    }
}
