// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include "gui/charts/save.hpp"

#include <QImage>
#include <QTimer>
#include <QWidget>

#include <memory>
#include <optional>

class QGraphicsScene;
class QPrinter;

namespace gui {

/// A chart on screen, in the dress of the window; files and paper keep it light.
///
/// Drawing is put off until the view is seen and nothing else has come for a moment, and done in two steps with a turn
/// of the event loop between, so that the hand is never held up for long.
class ChartView : public QWidget {
    Q_OBJECT

public:
    explicit ChartView(QWidget* parent = nullptr);
    ~ChartView() override;

    void set_chart(charts::Chart chart, const QString& words);
    bool has_chart() const { return chart_.has_value(); }
    const charts::Chart& chart() const { return *chart_; }
    void print(QPrinter& printer) const;
    /// Is the picture on screen the one of the chart as it is?
    bool drawn() const { return !stale_; }

    QSize sizeHint() const override { return {900, 600}; }
    QSize minimumSizeHint() const override { return {360, 240}; }

protected:
    void paintEvent(QPaintEvent* event) override;
    void resizeEvent(QResizeEvent* event) override;
    void showEvent(QShowEvent* event) override;
    void changeEvent(QEvent* event) override;

private:
    void draw_later();
    void make_scene();
    void paint_scene();

    std::optional<charts::Chart> chart_;
    std::unique_ptr<QGraphicsScene> scene_;
    QImage picture_;
    QTimer scene_timer_;
    QTimer paint_timer_;
    bool stale_ = true;
};

}  // namespace gui
